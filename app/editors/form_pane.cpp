// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/form_pane.h"

#include <QSignalBlocker>
#include <QTimer>
#include <QVBoxLayout>

#include "bench/theme.h"
#include "design/edit.h"
#include "editors/derived.h"
#include "editors/form_builder.h"

namespace editors {

using Which = document::WholePart::Which;

namespace {

const design::Item* itemAt(const design::Design& d, const design::ItemIndex& at) {
    if (at.place < 0 || at.place >= static_cast<int>(d.coil.size())) return nullptr;
    const auto& order = d.coil[static_cast<std::size_t>(at.place)].order;
    return at.item < 0 || at.item >= static_cast<int>(order.size()) ? nullptr
                                                                    : &order[static_cast<std::size_t>(at.item)];
}

template <class T>
Find<T> itemOf(const design::ItemIndex& at) {
    return [at](design::Design& d) -> T* {
        const auto* item = itemAt(d, at);
        return item == nullptr
                   ? nullptr
                   : std::get_if<T>(const_cast<std::variant<design::Section, design::Barrier, design::Shield>*>(
                         &item->what));  // NOLINT
    };
}

QString nameOf(const design::Item& item) {
    if (const auto* s = item.section()) return QObject::tr("section %1").arg(QString::fromStdString(s->label()));
    if (const auto* s = item.shield()) return QObject::tr("shield %1").arg(QString::fromStdString(s->name));
    return QObject::tr("insulation");
}

}  // namespace

FormPane::FormPane(document::Document& document, document::Selection& selection, QWidget* parent)
    : QWidget(parent),
      document_(document),
      selection_(selection),
      parts_(new QComboBox(this)),
      derived_(new QLabel(this)),
      refused_(new QLabel(this)),
      scroll_(new QScrollArea(this)) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(12, 8, 12, 8);
    layout->addWidget(parts_);
    layout->addWidget(derived_);
    layout->addWidget(refused_);
    layout->addWidget(scroll_, 1);
    parts_->setAccessibleName(tr("part of the design"));
    parts_->setToolTip(tr("Every part of the design has a form; this list reaches them all."));
    derived_->setWordWrap(true);
    derived_->setForegroundRole(QPalette::PlaceholderText);
    refused_->setWordWrap(true);
    refused_->setVisible(false);
    scroll_->setWidgetResizable(true);
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(parts_, &QComboBox::activated, this,
            [this](int at) { selection_.select(listed_[static_cast<std::size_t>(at)]); });
    connect(&selection_, &document::Selection::changed, this, [this] { rebuild(); });
    connect(&document_, &document::Document::changed, this, [this] {
        listParts();
        // After the field that made the change has finished with it.
        if (shape() != shape_) QTimer::singleShot(0, this, [this] { rebuild(); });
    });
    listParts();
    rebuild();
}

void FormPane::listParts() {
    const QSignalBlocker quiet(parts_);
    parts_->clear();
    listed_.clear();
    const auto add = [&](const QString& text, document::Selected part) {
        parts_->addItem(text);
        listed_.push_back(std::move(part));
    };
    const auto& d = *document_.design();
    add(tr("brief"), document::WholePart{Which::Brief});
    add(tr("core"), document::WholePart{Which::Core});
    add(tr("bobbin"), document::WholePart{Which::Bobbin});
    for (const auto& w : d.windings)
        add(tr("winding %1").arg(QString::fromStdString(w.name)), document::WindingPart{w.name});
    for (std::size_t p = 0; p < d.coil.size(); ++p)
        for (std::size_t i = 0; i < d.coil[p].order.size(); ++i)
            add(nameOf(d.coil[p].order[i]), design::ItemIndex{static_cast<int>(p), static_cast<int>(i)});
    add(tr("terminals and ports"), document::WholePart{Which::Terminals});
    add(tr("hook-ups"), document::WholePart{Which::HookUps});
    add(tr("conditions and assumptions"), document::WholePart{Which::Conditions});
    follow();
}

void FormPane::follow() {
    const auto at = std::find(listed_.begin(), listed_.end(), selection_.selected());
    const QSignalBlocker quiet(parts_);
    parts_->setCurrentIndex(at == listed_.end() ? 1 : static_cast<int>(at - listed_.begin()));
}

std::string FormPane::shape() const {
    const auto& d = *document_.design();
    std::string all = std::to_string(selection_.selected().index());
    const auto count = [&](std::size_t n) { all += "," + std::to_string(n); };
    count(d.core.stack.size());
    count(d.brief.promises.size());
    count(d.brief.masks.size());
    count(d.terminals.size());
    count(d.ports.size());
    count(d.conditions.directCurrents.size());
    count(d.filling.has_value());
    for (const auto& h : d.hookUps)
        for (const auto& use : h.ports) {
            count(use.through.has_value());
            count(use.across.size());
        }
    for (const auto& w : d.windings) {
        all += w.name;
        count(w.foil.has_value());
        count(w.taps.size());
    }
    for (const auto& place : d.coil)
        for (const auto& item : place.order) {
            count(item.what.index());
            if (const auto* s = item.section()) count(s->interlayer.has_value());
        }
    return all;
}

void FormPane::rebuild() {
    follow();
    shape_ = shape();
    fields_.clear();
    auto* host = new QWidget;
    auto* rows = new QFormLayout(host);
    rows->setContentsMargins(0, 4, 8, 4);
    rows->setVerticalSpacing(0);
    rows->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    FormBuilder form(document_, host, rows, [this](const QString& sentence) {
        refused_->setText(sentence);
        refused_->setVisible(!sentence.isEmpty());
        QPalette shown = refused_->palette();
        shown.setColor(QPalette::WindowText, bench::colour(bench::Token::Broken));
        refused_->setPalette(shown);
    });
    refused_->setVisible(false);
    build(form);
    fields_ = form.fields_();
    scroll_->setWidget(host);
    showAnswer(answer_);
}

void FormPane::build(FormBuilder& form) {
    const auto& part = selection_.selected();
    if (const auto* at = std::get_if<design::ItemIndex>(&part);
        at != nullptr && itemAt(*document_.design(), *at) != nullptr)
        return buildItem(form, *at);
    if (const auto* winding = std::get_if<document::WindingPart>(&part)) {
        const std::string name = winding->name;
        form.add<design::Winding>(
            [name](design::Design& d) -> design::Winding* {
                for (auto& w : d.windings)
                    if (w.name == name) return &w;
                return nullptr;
            },
            QString::fromStdString(name), {"name"});
        return;
    }
    const auto* whole = std::get_if<document::WholePart>(&part);
    buildWhole(form, whole != nullptr ? *whole : document::WholePart{Which::Core});
}

void FormPane::buildItem(FormBuilder& form, const design::ItemIndex& at) {
    const auto& item = *itemAt(*document_.design(), at);
    const QString owner = nameOf(item);
    if (item.section() != nullptr)
        form.add(itemOf<design::Section>(at), owner, {"winding", "name"});
    else if (item.shield() != nullptr)
        form.add(itemOf<design::Shield>(at), owner, {"name"});
    else
        form.add(itemOf<design::Barrier>(at), owner);
}

void FormPane::buildWhole(FormBuilder& form, const document::WholePart& part) {
    using design::Design;
    const Find<Design> whole = [](Design& d) { return &d; };
    switch (part.which) {
        case Which::Brief:
            form.addOnly(whole, {}, {"name", "part_number", "revision", "note"});
            form.add<design::Brief>([](Design& d) { return &d.brief; }, tr("the brief"));
            break;
        case Which::Core:
            form.add<design::Core>([](Design& d) { return &d.core; }, tr("the core"));
            break;
        case Which::Bobbin:
            form.addOnly(whole, tr("the design"), {"bobbin"});
            break;
        case Which::Terminals:
            form.addOnly(whole, {}, {"terminals", "ports"});
            break;
        case Which::HookUps:
            form.addOnly(whole, {}, {"hook_ups"});
            break;
        case Which::Conditions:
            form.addOnly(whole, tr("the design"), {"filling", "conditions", "assumptions"});
            break;
    }
}

void FormPane::showAnswer(analysis::AnswerPtr answer) {
    answer_ = std::move(answer);
    const auto* at = selection_.item();
    const QString text = answer_ && at != nullptr ? derivedOf(*answer_, *at) : QString();
    derived_->setText(text);
    derived_->setVisible(!text.isEmpty());
}

}  // namespace editors
