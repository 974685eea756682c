// SPDX-License-Identifier: GPL-3.0-or-later
// A picture of many things of which one is told at a time.
#pragma once

#include <QWidget>

namespace bench {

/// Left and right, Home and End go from thing to thing, and the mouse tells the one under it.
class PointedPicture : public QWidget {
    Q_OBJECT
public:
    explicit PointedPicture(QWidget* parent);

signals:
    void told(const QString& words);

protected:
    [[nodiscard]] virtual int count() const = 0;
    /// The thing at a place of the picture; -1: none.
    [[nodiscard]] virtual int at(const QPointF& place) const = 0;
    [[nodiscard]] virtual QString wordsOf(int thing) const = 0;
    /// On its ground, where it `isEmpty` not; then its description stands there.
    virtual void paint(QPainter& painter) const = 0;
    [[nodiscard]] virtual bool isEmpty() const = 0;

    [[nodiscard]] int chosen() const { return chosen_; }  ///< that is told; -1: none
    void forget() { chosen_ = -1; }                       ///< what is shown is another
    /// The chosen thing's words, else what the picture shows, in a line that begins at `top`.
    void paintFootWords(QPainter& painter, double top) const;

    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void choose(int thing);
    int chosen_ = -1;
};

}  // namespace bench
