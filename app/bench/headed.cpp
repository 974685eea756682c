// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/headed.h"

#include <QVBoxLayout>

namespace bench {

QWidget* headed(QWidget* heading, QWidget* what) {
    QFont strong = heading->font();
    strong.setWeight(QFont::DemiBold);
    heading->setFont(strong);
    auto* group = new QWidget;
    auto* column = new QVBoxLayout(group);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(heading);
    column->addWidget(what, 1);
    return group;
}

}  // namespace bench
