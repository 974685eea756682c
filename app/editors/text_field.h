// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers with units, and text.
#pragma once

#include <QLineEdit>

#include "editors/field.h"

namespace editors {

class TextField : public Field {
    Q_OBJECT
public:
    TextField(FieldHome home, Part part, FaultLine* line, QWidget* parent);
    void showDesign() override;
    [[nodiscard]] QString typed() const override { return line_->text(); }
    void finish() override;
    [[nodiscard]] QLineEdit* line() { return line_; }

protected:
    void designChanged() override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void step(int steps, Qt::KeyboardModifiers modifiers);
    bool keyPressed(int key, Qt::KeyboardModifiers modifiers);
    void restore();
    QLineEdit* line_;
    bool chosen_ = false;  // focus came by click or Tab: the wheel may step
    bool edited_ = false;
};

}  // namespace editors
