// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/measured_window.h"

#include <QDragEnterEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QMimeData>
#include <QUrl>
#include <QVBoxLayout>

#include "bench/language.h"
#include "editors/labels.h"
#include "exchange/measured_file.h"
#include "exchange/read_file.h"
#include "measured/comparison.h"
#include "units/fault.h"
#include "units/text.h"

namespace bench {

QStringList filesOf(const QMimeData& data) {
    QStringList files;
    for (const QUrl& url : data.urls())
        if (url.isLocalFile()) files << url.toLocalFile();
    return files;
}

MeasuredWindow::MeasuredWindow(Bench bench, plots::OverlaysPtr overlays, QWidget* parent)
    : QDialog(parent), bench_(std::move(bench)), overlays_(std::move(overlays)) {
    setWindowTitle(tr("Measured curves of %1").arg(editors::text(bench_().design->name)));
    setAcceptDrops(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 12, 12, 12);
    column->setSpacing(8);
    column->addLayout(opening());
    picker_ = new ColumnPicker;
    column->addWidget(picker_, 2);
    column->addLayout(foot());
    list_ = new QListWidget;
    list_->setAccessibleName(tr("Curves that lie over the plots, and how far they are from what is computed"));
    list_->setWordWrap(true);
    column->addWidget(list_, 2);
    state_ =
        new QLabel(tr("Open an instrument's table (CSV, decimal point or comma, dB, V, Ω, any columns) or a "
                      "Touchstone file, or drop it here or on the bench."));
    state_->setObjectName(QStringLiteral("measuredState"));
    state_->setWordWrap(true);
    column->addWidget(state_);
    for (QPushButton* button : findChildren<QPushButton*>()) button->setAutoDefault(false);
    connect(picker_, &ColumnPicker::chosen, this, &MeasuredWindow::showEnabled);
    connect(list_, &QListWidget::currentRowChanged, this, &MeasuredWindow::showEnabled);
    resize(900, 600);
    showPorts();
    showDistances();
    open_->setFocus();
}

QLayout* MeasuredWindow::opening() {
    auto* row = new QHBoxLayout;
    open_ = new QPushButton(tr("&Open a file…"));
    file_ = new QLabel(tr("No file yet."));
    row->addWidget(open_);
    row->addWidget(file_, 1);
    connect(open_, &QPushButton::clicked, this, &MeasuredWindow::choose);
    return row;
}

QLayout* MeasuredWindow::foot() {
    auto* row = new QHBoxLayout;
    auto* portLabel = new QLabel(tr("Impedance a&t"));
    port_ = new QComboBox;
    port_->setAccessibleName(tr("Port that an impedance was measured at"));
    portLabel->setBuddy(port_);
    auto* relativeLabel = new QLabel(tr("Made to agree &at"));
    relative_ = new QLineEdit;
    relative_->setAccessibleName(tr("Frequency at which measured and computed level are made to agree"));
    relative_->setToolTip(tr("For a response whose level was not measured against the EMF: 1 kHz; empty: as it is"));
    relative_->setMaximumWidth(100);
    relativeLabel->setBuddy(relative_);
    lay_ = new QPushButton(tr("&Lay over the plots"));
    away_ = new QPushButton(tr("Take a&way"));
    away_->setToolTip(tr("The chosen curve no longer lies over the plots"));
    for (QWidget* widget : std::initializer_list<QWidget*>{portLabel, port_, relativeLabel, relative_})
        row->addWidget(widget);
    row->addStretch(1);
    row->addWidget(lay_);
    row->addWidget(away_);
    connect(lay_, &QPushButton::clicked, this, &MeasuredWindow::layOver);
    connect(away_, &QPushButton::clicked, this, &MeasuredWindow::takeAway);
    return row;
}

void MeasuredWindow::choose() {
    const QString path =
        QFileDialog::getOpenFileName(this, tr("A measured file"), QFileInfo(path_).path(),
                                     tr("Measured files (*.csv *.txt *.tsv *.dat *.ts *.s?p);;All files (*)"));
    if (!path.isEmpty()) take(path);
}

void MeasuredWindow::take(const QString& path) {
    try {
        const std::string name = path.toStdString();
        std::string text = exchange::readFile(name);
        if (exchange::isTouchstone(name))
            picker_->clear();
        else
            picker_->show(text, name);
        text_ = std::move(text);
        path_ = path;
        file_->setText(QFileInfo(path).fileName());
        showPorts();
        state_->setText(
            tr("Look whether the columns are what they are taken for, then lay the curves over the plots."));
    } catch (const std::exception& bad) {
        state_->setText(translated(bad.what()));
    }
    showEnabled();
}

void MeasuredWindow::showPorts() {
    const auto shown = bench_();
    const QString before = port_->currentData().toString();
    port_->clear();
    port_->addItem(tr("the source side"), QString());
    for (const auto& hookUp : shown.design->hookUps)
        if (hookUp.name == shown.answer->hookUp)
            for (const auto& use : hookUp.ports) port_->addItem(editors::text(use.port), editors::text(use.port));
    port_->setCurrentIndex(std::max(0, port_->findData(before)));
}

std::optional<double> MeasuredWindow::relativeTo() const {
    const std::string text = relative_->text().trimmed().toStdString();
    if (text.empty()) return {};
    return units::read(units::Kind::Frequency, text);
}

std::vector<plots::MeasuredOverlay> MeasuredWindow::read() const {
    const auto shown = bench_();
    const std::string port = port_->currentData().toString().toStdString(), name = path_.toStdString();
    const design::HookUp* hookUp = nullptr;
    for (const auto& one : shown.design->hookUps)
        if (one.name == shown.answer->hookUp) hookUp = &one;
    if (hookUp == nullptr) units::refuse(name, "no hook-up to hold it against", "one");
    const auto table = picker_->empty() ? exchange::readMeasuredFile(text_, name, *hookUp, port, {}) : picker_->read();
    const std::string side = port.empty() ? std::string() : measured::sideOf(*hookUp, port).value_or("");
    std::vector<plots::MeasuredOverlay> all;
    for (const auto& curve : table.curves) {
        const bool level = curve.kind == measured::CurveKind::Response;
        const auto relative = level ? relativeTo() : std::nullopt;
        const auto held = measured::comparison(curve, *shown.answer, side, relative, name);
        all.push_back({curve, held.trace, held.curve, relative, QFileInfo(path_).fileName()});
    }
    return all;
}

void MeasuredWindow::layOver() {
    try {
        auto all = overlays_ ? *overlays_ : std::vector<plots::MeasuredOverlay>();
        auto more = read();
        std::erase_if(all, [&](const auto& old) {  // the same again replaces what lay there
            return std::any_of(more.begin(), more.end(), [&](const auto& one) {
                return one.file == old.file && one.trace == old.trace && one.column == old.column;
            });
        });
        const auto count = static_cast<int>(more.size());
        all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
        give(std::move(all));
        list_->setCurrentRow(list_->count() - 1);
        state_->setText(tr("Curves laid over the plots: %1.").arg(count));
    } catch (const std::exception& bad) {
        state_->setText(translated(bad.what()));
    }
}

void MeasuredWindow::takeAway() {
    const int row = list_->currentRow();
    if (!overlays_ || row < 0 || row >= static_cast<int>(overlays_->size())) return;
    auto all = *overlays_;
    all.erase(all.begin() + row);
    give(std::move(all));
    state_->setText(tr("Taken away."));
}

void MeasuredWindow::give(std::vector<plots::MeasuredOverlay> all) {
    overlays_ = all.empty() ? nullptr : std::make_shared<const std::vector<plots::MeasuredOverlay>>(std::move(all));
    showDistances();
    emit laid(overlays_);
}

QString MeasuredWindow::distance(const plots::MeasuredOverlay& overlay) const {
    const auto shown = bench_();
    const auto* trace = shown.answer ? shown.answer->trace(overlay.trace) : nullptr;
    if (trace == nullptr) return tr("nothing computed to hold it against");
    try {
        QStringList lines = editors::text(measured::comparisonWords(measured::comparison(
                                              overlay.curve, *trace, overlay.column, overlay.relativeTo)))
                                .split(QLatin1Char('\n'), Qt::SkipEmptyParts);
        for (QString& line : lines) line = line.trimmed();
        return lines.join(QStringLiteral("; "));
    } catch (const units::BadInput& bad) {
        return translated(bad.what());
    }
}

void MeasuredWindow::showDistances() {
    const int row = list_->currentRow();
    list_->clear();
    if (overlays_)
        for (const auto& overlay : *overlays_) list_->addItem(overlay.file + QStringLiteral(": ") + distance(overlay));
    list_->setCurrentRow(std::min(row, list_->count() - 1));
    showEnabled();
}

QStringList MeasuredWindow::words() const {
    QStringList all;
    for (int row = 0; row < list_->count(); ++row) all << list_->item(row)->text();
    return all;
}

void MeasuredWindow::showEnabled() {
    lay_->setEnabled(!text_.empty());
    away_->setEnabled(list_->currentRow() >= 0);
}

void MeasuredWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (!filesOf(*event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void MeasuredWindow::dropEvent(QDropEvent* event) {
    const QStringList files = filesOf(*event->mimeData());
    if (files.isEmpty()) return;
    take(files.constFirst());
    event->acceptProposedAction();
}

}  // namespace bench
