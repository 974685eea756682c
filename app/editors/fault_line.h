// SPDX-License-Identifier: GPL-3.0-or-later
// The sentence beneath fields that says what is wrong with them. Its room is always kept, so that nothing jumps.
#pragma once

#include <QWidget>
#include <vector>

namespace editors {

/// Spans a whole row and serves all fields in it: the sentence of the field with the keyboard, else of the first that
/// is wrong. It begins beneath its field if it has room there, else further left; what still does not fit is in the
/// tip.
class FaultLine : public QWidget {
    Q_OBJECT
public:
    explicit FaultLine(QWidget* parent);
    /// An empty sentence takes the field's back.
    void say(QWidget* field, const QString& sentence);
    [[nodiscard]] QString sentence() const;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    struct Said {
        QWidget* field;
        QString sentence;
    };
    [[nodiscard]] const Said* shown() const;
    void renew();
    [[nodiscard]] QFont small() const;
    std::vector<Said> said_;
};

}  // namespace editors
