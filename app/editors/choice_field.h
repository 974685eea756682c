// SPDX-License-Identifier: GPL-3.0-or-later
// One out of a list, or yes and no.
#pragma once

#include <QComboBox>

#include "editors/field.h"

namespace editors {

/// One out of a list, found by typing any piece of a word.
class ChoiceField : public Field {
    Q_OBJECT
public:
    ChoiceField(FieldHome home, Part part, FaultLine* line, QWidget* parent);
    void showDesign() override;
    [[nodiscard]] QString typed() const override { return box_->currentText(); }
    void finish() override;
    void retire() override;
    [[nodiscard]] QComboBox* box() { return box_; }

protected:
    void designChanged() override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void makeSearchable();
    void fill();
    void restore();
    [[nodiscard]] QString meant(const QString& typed) const;
    QComboBox* box_;
    bool chosen_ = false;
};

}  // namespace editors
