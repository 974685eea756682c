// SPDX-License-Identifier: GPL-3.0-or-later
// The sentence beneath a field that says what is wrong with it. Its room is always kept, so that nothing jumps.
#pragma once

#include <QWidget>

namespace editors {

/// Spans a whole row; the sentence begins beneath its field if it has room there, else further left. What still does
/// not fit is in the tip.
class FaultLine : public QWidget {
    Q_OBJECT
public:
    explicit FaultLine(QWidget* field);
    void say(const QString& sentence);
    [[nodiscard]] const QString& sentence() const noexcept { return sentence_; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    [[nodiscard]] QFont small() const;
    QWidget* field_;
    QString sentence_;
};

}  // namespace editors
