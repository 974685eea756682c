// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/price_choice.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>

#include "bench/language.h"
#include "editors/labels.h"
#include "exchange/read_file.h"
#include "units/fault.h"

namespace bench {

PriceChoice::PriceChoice(QString without, QWidget* parent) : QWidget(parent), without_(std::move(without)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    choose_ = new QPushButton(tr("&Prices…"));
    choose_->setToolTip(tr("The shop's own price file: only parts that have a price, and cost at 100 units"));
    none_ = new QPushButton(tr("&No prices"));
    none_->setToolTip(without_);
    words_ = new QLabel;
    words_->setObjectName(QStringLiteral("priceWords"));
    words_->setWordWrap(true);
    row->addWidget(choose_);
    row->addWidget(none_);
    row->addWidget(words_, 1);
    connect(choose_, &QPushButton::clicked, this, &PriceChoice::choose);
    connect(none_, &QPushButton::clicked, this, [this] {
        prices_.reset();
        show();
        choose_->setFocus();
    });
    show();
}

void PriceChoice::choose() {
    const QString path =
        QFileDialog::getOpenFileName(this, tr("The shop's prices"), QFileInfo(file_).path(), tr("Price files (*.csv)"));
    if (!path.isEmpty()) take(path);
}

void PriceChoice::take(const QString& path) {
    try {
        prices_ = std::make_shared<const shop::Prices>(
            shop::readPrices(exchange::readFile(path.toStdString()), path.toStdString()));
        file_ = path;
        show();
    } catch (const units::BadInput& bad) {
        emit refused(translated(bad.what()));
    }
}

void PriceChoice::show() {
    none_->setEnabled(prices_ != nullptr);
    if (!prices_) return words_->setText(without_);
    QString words =
        tr("Cost of one unit at 100 in %1 by %2").arg(editors::text(prices_->currency), QFileInfo(file_).fileName());
    if (!prices_->validUntil.empty()) words += tr(", valid until %1").arg(editors::text(prices_->validUntil));
    words_->setText(words + QLatin1Char('.'));
}

}  // namespace bench
