// SPDX-License-Identifier: GPL-3.0-or-later
// A line of text that ends in "…" where the room ends; the whole stands in the tip.
#pragma once

#include <QWidget>

namespace bench {

class ElidedLabel : public QWidget {
    Q_OBJECT
public:
    explicit ElidedLabel(QWidget* parent = nullptr);
    void setText(const QString& text);
    [[nodiscard]] const QString& text() const { return text_; }
    void setColourRole(QPalette::ColorRole role);
    void setAlignment(Qt::Alignment alignment);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString text_;
    QPalette::ColorRole role_ = QPalette::WindowText;
    Qt::Alignment alignment_ = Qt::AlignLeft;
};

}  // namespace bench
