// SPDX-License-Identifier: GPL-3.0-or-later
// Measured curves of the open design's unit: read from files, laid over the plots, and how far they lie away.
#pragma once

#include <QDialog>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <functional>

#include "analysis/answer.h"
#include "bench/column_picker.h"
#include "plots/measured_overlay.h"

namespace bench {

class MeasuredWindow : public QDialog {
    Q_OBJECT
public:
    /// What the bench shows.
    struct Shown {
        design::DesignPtr design;
        analysis::AnswerPtr answer;
    };
    using Bench = std::function<Shown()>;
    /// `bench` outlives this.
    MeasuredWindow(Bench bench, plots::OverlaysPtr overlays, QWidget* parent);

    /// Reads a file and shows what it is guessed to hold; what is amiss is said.
    void take(const QString& path);
    /// What the choices say is laid over the plots.
    void layOver();
    [[nodiscard]] const plots::OverlaysPtr& overlays() const { return overlays_; }
    [[nodiscard]] ColumnPicker& picker() { return *picker_; }
    [[nodiscard]] QString state() const { return state_->text(); }
    [[nodiscard]] QStringList words() const;  ///< of each curve that lies over the plots
    /// The computed curves are others now.
    void showDistances();

signals:
    void laid(const plots::OverlaysPtr& overlays);

protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    QLayout* opening();
    QLayout* foot();
    void choose();
    void takeAway();
    void give(std::vector<plots::MeasuredOverlay> all);
    void showPorts();
    void showEnabled();
    [[nodiscard]] std::vector<plots::MeasuredOverlay> read() const;
    [[nodiscard]] std::optional<double> relativeTo() const;
    [[nodiscard]] QString distance(const plots::MeasuredOverlay& overlay) const;

    Bench bench_;
    plots::OverlaysPtr overlays_;
    QString path_;
    std::string text_;
    QPushButton *open_ = nullptr, *lay_ = nullptr, *away_ = nullptr;
    QLabel *file_ = nullptr, *state_ = nullptr;
    ColumnPicker* picker_ = nullptr;
    QComboBox* port_ = nullptr;
    QLineEdit* relative_ = nullptr;
    QListWidget* list_ = nullptr;
};

/// The files that a drag carries; empty unless they are files.
[[nodiscard]] QStringList filesOf(const QMimeData& data);

}  // namespace bench
