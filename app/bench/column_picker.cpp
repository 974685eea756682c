// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/column_picker.h"

#include <QCoreApplication>
#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QVBoxLayout>
#include <array>
#include <cmath>

#include "editors/labels.h"
#include "units/fault.h"
#include "units/text.h"

namespace bench {

namespace {

using exchange::AngleForm;
using exchange::ValueForm;
using measured::CurveKind;

/// A form of values with its unit's prefix.
struct FormChoice {
    const char* words;
    ValueForm form;
    double factor;
    CurveKind kind;
};
constexpr std::array<FormChoice, 16> forms{{
    {QT_TRANSLATE_NOOP("bench", "dB re EMF"), ValueForm::Decibel, 1, CurveKind::Response},
    {QT_TRANSLATE_NOOP("bench", "share of the EMF"), ValueForm::Ratio, 1, CurveKind::Response},
    {QT_TRANSLATE_NOOP("bench", "V"), ValueForm::Volt, 1, CurveKind::Response},
    {QT_TRANSLATE_NOOP("bench", "mV"), ValueForm::Volt, 1e-3, CurveKind::Response},
    {QT_TRANSLATE_NOOP("bench", "dBV"), ValueForm::LevelDbv, 1, CurveKind::Response},
    {QT_TRANSLATE_NOOP("bench", "dBu"), ValueForm::LevelDbu, 1, CurveKind::Response},
    {QT_TRANSLATE_NOOP("bench", "real part"), ValueForm::Real, 1, CurveKind::Response},
    {QT_TRANSLATE_NOOP("bench", "Ω"), ValueForm::Ohm, 1, CurveKind::Impedance},
    {QT_TRANSLATE_NOOP("bench", "kΩ"), ValueForm::Ohm, 1e3, CurveKind::Impedance},
    {QT_TRANSLATE_NOOP("bench", "mΩ"), ValueForm::Ohm, 1e-3, CurveKind::Impedance},
    {QT_TRANSLATE_NOOP("bench", "real part, Ω"), ValueForm::Real, 1, CurveKind::Impedance},
    {QT_TRANSLATE_NOOP("bench", "%"), ValueForm::Percent, 1, CurveKind::Distortion},
    {QT_TRANSLATE_NOOP("bench", "dB re the fundamental"), ValueForm::Decibel, 1, CurveKind::Distortion},
    {QT_TRANSLATE_NOOP("bench", "V/√Hz"), ValueForm::VoltPerRootHertz, 1, CurveKind::Noise},
    {QT_TRANSLATE_NOOP("bench", "µV/√Hz"), ValueForm::VoltPerRootHertz, 1e-6, CurveKind::Noise},
    {QT_TRANSLATE_NOOP("bench", "nV/√Hz"), ValueForm::VoltPerRootHertz, 1e-9, CurveKind::Noise},
}};

QString formWords(const char* words) {
    return QCoreApplication::translate("bench", words);
}

void chooseData(QComboBox& box, const QVariant& data) {
    box.setCurrentIndex(std::max(0, box.findData(data)));
}

}  // namespace

ColumnPicker::ColumnPicker(QWidget* parent) : QWidget(parent) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    auto* left = new QFormLayout;
    auto* right = new QFormLayout;
    kind_ = choice(tr("&Kind"), tr("What the values are of"), left);
    kind_->addItem(tr("response"), int(CurveKind::Response));
    kind_->addItem(tr("impedance"), int(CurveKind::Impedance));
    kind_->addItem(tr("distortion"), int(CurveKind::Distortion));
    kind_->addItem(tr("noise"), int(CurveKind::Noise));
    frequency_ = choice(tr("F&requency"), tr("The column of frequencies"), left);
    hertz_ = choice(tr("in"), tr("The unit that frequencies stand in"), left);
    for (const auto& [words, hertz] : {std::pair{"Hz", 1.0}, {"kHz", 1e3}, {"MHz", 1e6}})
        hertz_->addItem(QString::fromLatin1(words), hertz);
    decimal_ = choice(tr("&Decimal sign"), tr("A point or a comma"), left);
    decimal_->addItem(tr("point"), false);
    decimal_->addItem(tr("comma"), true);
    value_ = choice(tr("&Values"), tr("The column of values"), right);
    form_ = choice(tr("as"), tr("What the values are, and in what unit"), right);
    second_ = choice(tr("&Angle"), tr("The column of phase or angle, or of imaginary parts"), right);
    angle_ = choice(tr("as"), tr("What the second column is"), right);
    angle_->addItem(tr("degrees"), int(AngleForm::Degree));
    angle_->addItem(tr("radians"), int(AngleForm::Radian));
    angle_->addItem(tr("imaginary part"), int(AngleForm::Imaginary));
    emf_ = new QLineEdit;
    emf_->setAccessibleName(tr("EMF of the generator"));
    emf_->setToolTip(tr("What levels in V, dBV and dBu are told from, with its unit"));
    right->addRow(tr("&EMF"), emf_);
    connect(emf_, &QLineEdit::editingFinished, this, &ColumnPicker::take);
    rows_ = new QTableWidget;
    rows_->setAccessibleName(tr("First rows of the file"));
    rows_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    rows_->setTabKeyNavigation(false);
    rows_->verticalHeader()->setVisible(false);
    rows_->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
    row->addLayout(left);
    row->addLayout(right);
    row->addWidget(rows_, 1);
    clear();
}

QComboBox* ColumnPicker::choice(const QString& name, const QString& tip, QFormLayout* form) {
    auto* box = new QComboBox;
    QString plain = name;
    box->setAccessibleName(plain.remove(QLatin1Char('&')));
    box->setToolTip(tip);
    box->setMinimumContentsLength(14);
    form->addRow(name, box);
    connect(box, &QComboBox::activated, this, &ColumnPicker::take);
    return box;
}

void ColumnPicker::show(const std::string& text, const std::string& file) {
    const auto guessed = exchange::guessedPicking(text, file);
    text_ = text;
    file_ = file;
    picking_ = guessed;
    showChoices();
    setEnabled(true);
}

void ColumnPicker::clear() {
    text_.clear();
    rows_->clear();
    rows_->setRowCount(0);
    rows_->setColumnCount(0);
    setEnabled(false);
}

exchange::MeasuredTable ColumnPicker::read() const {
    return exchange::readMeasuredTable(text_, file_, picked());
}

/// The boxes as the picking is.
void ColumnPicker::showChoices() {
    filling_ = true;
    const auto preview = exchange::preview(text_, picking_);
    for (auto* box : {frequency_, value_, second_}) box->clear();
    second_->addItem(tr("none"), -1);
    for (int k = 0; k < static_cast<int>(preview.columns.size()); ++k)
        for (auto* box : {frequency_, value_, second_})
            box->addItem(editors::text(preview.columns[static_cast<std::size_t>(k)]), k);
    chooseData(*kind_, int(picking_.kind));
    chooseData(*frequency_, static_cast<int>(picking_.frequency));
    chooseData(*hertz_, picking_.hertz);
    chooseData(*decimal_, picking_.decimalComma);
    chooseData(*value_, picking_.value ? static_cast<int>(*picking_.value) : -1);
    chooseData(*second_, picking_.second ? static_cast<int>(*picking_.second) : -1);
    chooseData(*angle_, int(picking_.angle));
    form_->clear();
    for (std::size_t k = 0; k < forms.size(); ++k)
        if (forms[k].kind == picking_.kind) form_->addItem(formWords(forms[k].words), static_cast<int>(k));
    for (int k = 0; k < form_->count(); ++k) {
        const auto& one = forms[static_cast<std::size_t>(form_->itemData(k).toInt())];
        if (one.form == picking_.form && std::abs(one.factor / picking_.factor - 1) < 1e-9) form_->setCurrentIndex(k);
    }
    emf_->setText(editors::text(units::writeExact(units::Kind::Voltage, picking_.emf)));
    const bool told = picking_.form == ValueForm::Volt || picking_.form == ValueForm::LevelDbv ||
                      picking_.form == ValueForm::LevelDbu;
    emf_->setEnabled(told);
    angle_->setEnabled(picking_.second.has_value());
    filling_ = false;
    showRows();
}

void ColumnPicker::showRows() {
    const auto preview = exchange::preview(text_, picking_);
    rows_->setColumnCount(static_cast<int>(preview.columns.size()));
    rows_->setRowCount(static_cast<int>(preview.rows.size()));
    QStringList heads;
    for (const auto& name : preview.columns) heads << editors::text(name);
    rows_->setHorizontalHeaderLabels(heads);
    for (int r = 0; r < rows_->rowCount(); ++r)
        for (int c = 0; c < rows_->columnCount(); ++c) {
            const auto& cells = preview.rows[static_cast<std::size_t>(r)];
            const auto at = static_cast<std::size_t>(c);
            rows_->setItem(r, c, new QTableWidgetItem(at < cells.size() ? editors::text(cells[at]) : QString()));
        }
    rows_->resizeColumnsToContents();
}

exchange::Picking ColumnPicker::picked() const {
    exchange::Picking now = picking_;
    now.kind = static_cast<CurveKind>(kind_->currentData().toInt());
    now.frequency = static_cast<std::size_t>(frequency_->currentData().toInt());
    now.hertz = hertz_->currentData().toDouble();
    now.decimalComma = decimal_->currentData().toBool();
    now.value = static_cast<std::size_t>(value_->currentData().toInt());
    const int second = second_->currentData().toInt();
    now.second = second < 0 ? std::nullopt : std::optional(static_cast<std::size_t>(second));
    now.angle = static_cast<AngleForm>(angle_->currentData().toInt());
    if (now.kind == picking_.kind && form_->currentIndex() >= 0) {
        const auto& one = forms[static_cast<std::size_t>(form_->currentData().toInt())];
        now.form = one.form;
        now.factor = one.factor;
    }
    return now;
}

/// A choice was made by hand.
void ColumnPicker::take() {
    if (filling_ || text_.empty()) return;
    auto now = picked();
    if (now.kind != picking_.kind) {  // the forms are others now
        for (const auto& one : forms)
            if (one.kind == now.kind) {
                now.form = one.form;
                now.factor = one.factor;
                break;
            }
    }
    try {
        now.emf = units::read(units::Kind::Voltage, emf_->text().toStdString());
        if (!(now.emf > 0)) now.emf = picking_.emf;
    } catch (const units::BadInput&) {
        now.emf = picking_.emf;  // the last good one stands in the field again
    }
    picking_ = now;
    showChoices();
    emit chosen();
}

}  // namespace bench
