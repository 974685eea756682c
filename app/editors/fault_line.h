// SPDX-License-Identifier: GPL-3.0-or-later
// The sentence beneath a field that says what is wrong with it. Its room is always kept, so that nothing jumps.
#pragma once

#include <QPointer>
#include <QWidget>
#include <vector>

#include "editors/binding.h"

namespace editors {

class FaultLine : public QWidget {
    Q_OBJECT
public:
    explicit FaultLine(QWidget* parent = nullptr);
    /// Shows the first fault of all bindings that were added. The sentence begins beneath `field` if it has room there.
    void add(Binding* binding, QWidget* field);
    [[nodiscard]] const QString& sentence() const noexcept { return sentence_; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void refresh();
    struct Source {
        QPointer<Binding> binding;
        QPointer<QWidget> field;
    };
    std::vector<Source> sources_;
    QString sentence_;
    QPointer<QWidget> faulty_;
};

/// The desktop's font one point smaller: units and sentences.
[[nodiscard]] QFont smallFont(const QFont& usual);

}  // namespace editors
