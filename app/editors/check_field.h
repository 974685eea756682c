// SPDX-License-Identifier: GPL-3.0-or-later
// Yes or no.
#pragma once

#include <QCheckBox>

#include "editors/field.h"

namespace editors {

/// Its text is "true" or "false". A tick that cannot be taken stays with its reason.
class CheckField : public Field {
    Q_OBJECT
public:
    CheckField(FieldHome home, Part part, FaultLine* line, QWidget* parent);
    void showDesign() override;
    [[nodiscard]] QString typed() const override { return box_->isChecked() ? "true" : "false"; }
    [[nodiscard]] QCheckBox* box() { return box_; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QCheckBox* box_;
};

}  // namespace editors
