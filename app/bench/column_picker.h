// SPDX-License-Identifier: GPL-3.0-or-later
// Which columns of a measured table are what, with the first rows to see it by.
#pragma once

#include <QComboBox>
#include <QLineEdit>
#include <QTableWidget>

#include "exchange/measured_table.h"

class QFormLayout;

namespace bench {

class ColumnPicker : public QWidget {
    Q_OBJECT
public:
    explicit ColumnPicker(QWidget* parent = nullptr);
    /// A table that was read from that file: the choices stand as they are guessed. Throws units::BadInput.
    void show(const std::string& text, const std::string& file);
    /// No table: nothing to choose.
    void clear();
    /// The curves as the choices say. Throws units::BadInput.
    [[nodiscard]] exchange::MeasuredTable read() const;
    [[nodiscard]] bool empty() const { return text_.empty(); }

signals:
    void chosen();  ///< another choice by hand

private:
    QComboBox* choice(const QString& name, const QString& tip, QFormLayout* form);
    void guess(const exchange::PickingWish& wish);
    void showChoices();
    void showRows();
    void take();
    [[nodiscard]] exchange::Picking picked() const;

    std::string text_, file_;
    exchange::Picking picking_;
    bool filling_ = false;
    QComboBox *kind_ = nullptr, *frequency_ = nullptr, *hertz_ = nullptr, *value_ = nullptr, *form_ = nullptr,
              *second_ = nullptr, *angle_ = nullptr, *decimal_ = nullptr;
    QLineEdit* emf_ = nullptr;
    QTableWidget* rows_ = nullptr;
};

}  // namespace bench
