// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/form_view.h"

#include <QVBoxLayout>

#include "bench/language.h"
#include "editors/table_view.h"
#include "units/fault.h"

namespace editors {

namespace {

QLabel* mutedLabel(const QString& text, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setForegroundRole(QPalette::PlaceholderText);
    label->setWordWrap(true);
    return label;
}

}  // namespace

FormView::FormView(const Form& form, FieldHome home, Folds& folds, QWidget* parent)
    : QWidget(parent), home_(home), folds_(folds), rows_(new QFormLayout(this)) {
    rows_->setContentsMargins(0, 4, 8, 4);
    rows_->setVerticalSpacing(0);
    rows_->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    for (const auto& line : form) std::visit([this](const auto& one) { add(one); }, line);
    closeGroups(0);
    for (const auto& group : groups_) fold(group, folds_[group.name]);
    openWhatIsWrong();
    chainTabs();
}

void FormView::closeGroups(int level) {
    while (!open_.empty() && open_.back().first >= level) {
        open_.back().second.last = rows_->rowCount();
        groups_.push_back(open_.back().second);
        open_.pop_back();
    }
}

void FormView::add(const Heading& heading) {
    closeGroups(heading.level);
    QWidget* shown = nullptr;
    QToolButton* folding = nullptr;
    if (heading.fold.empty()) {
        auto* label = new QLabel(heading.text, this);
        label->setWordWrap(true);
        shown = label;
    } else {
        folding = new QToolButton(this);
        folding->setText(heading.text);
        folding->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
        folding->setAutoRaise(true);
        folding->setFocusPolicy(Qt::StrongFocus);
        folding->setAccessibleName(heading.text);
        folding->setToolTip(tr("Shows or hides these fields"));
        folds_.try_emplace(heading.fold, heading.folded);
        shown = folding;
    }
    QFont strong = shown->font();
    strong.setWeight(heading.level > 2 ? QFont::Normal : QFont::DemiBold);
    shown->setFont(strong);
    auto* holder = new QWidget(this);
    auto* space = new QVBoxLayout(holder);
    space->setContentsMargins(0, heading.level == 1 ? 8 : 4, 0, 2);
    space->addWidget(shown, 0, folding != nullptr ? Qt::AlignLeft : Qt::Alignment());
    rows_->addRow(holder);
    if (folding == nullptr) return;
    Group group{rows_->rowCount(), rows_->rowCount(), heading.fold, folding};
    open_.emplace_back(heading.level, group);
    controls_.push_back({"fold " + heading.fold, folding, rows_->rowCount() - 1});
    connect(folding, &QToolButton::clicked, this, [this, name = heading.fold] {
        for (const auto& one : groups_)
            if (one.name == name) fold(one, !folds_[name]);
    });
}

void FormView::fold(const Group& group, bool folded) {
    folds_[group.name] = folded;
    group.heading->setArrowType(folded ? Qt::RightArrow : Qt::DownArrow);
    group.heading->setAccessibleDescription(folded ? tr("folded") : tr("open"));
    for (int row = group.first; row < group.last; ++row) rows_->setRowVisible(row, !folded);
    if (folded) return;
    for (const auto& inner : groups_)  // what is folded inside stays so
        if (inner.first > group.first && inner.last <= group.last && folds_[inner.name]) fold(inner, true);
}

void FormView::openWhatIsWrong() {
    for (const auto* f : fields_)
        if (f->faulty()) (void)control(f->part().path);
}

QWidget* FormView::control(const std::string& path) {
    for (const auto& c : controls_) {
        if (c.path != path) continue;
        for (const auto& group : groups_)
            if (c.row >= group.first && c.row < group.last && folds_[group.name]) fold(group, false);
        return c.widget;
    }
    return nullptr;
}

std::string FormView::pathWithKeyboard() const {
    for (const auto& c : controls_) {
        const QWidget* proxy = c.widget->focusProxy() != nullptr ? c.widget->focusProxy() : c.widget;
        if (proxy->hasFocus()) return c.path;
    }
    return {};
}

void FormView::retire() {
    blockSignals(true);
    for (auto* child : findChildren<QWidget*>()) child->blockSignals(true);
    for (auto* field : fields_) field->retire();
}

void FormView::chainTabs() {
    QWidget* before = nullptr;
    for (const auto& c : controls_) {
        if (before != nullptr) setTabOrder(before, c.widget);
        before = c.widget;
    }
}

Field* FormView::field(const Part& part, FaultLine* line, QWidget* parent) {
    auto* made = makeField(home_, part, line, parent);
    fields_.push_back(made);
    controls_.push_back({part.path, made, rows_->rowCount()});
    return made;
}

void FormView::add(const Part& part) {
    auto* line = new FaultLine(this);
    auto* made = field(part, line, this);
    if (part.kind == Part::Kind::Flag) {
        rows_->addRow(QString(), made);
    } else {
        auto* label = new QLabel(part.label, this);
        label->setToolTip(part.tip);
        label->setBuddy(made->focusProxy());
        rows_->addRow(label, made);
    }
    rows_->addRow(line);
}

QAbstractButton* FormView::button(const Act& act, QAbstractButton* made, FaultLine* line) {
    made->setText(act.text);
    made->setAccessibleName(act.name);
    made->setAccessibleDescription(act.reason);
    made->setToolTip(act.reason.isEmpty() ? act.name : act.reason);
    made->setEnabled(act.enabled);
    made->setFocusPolicy(Qt::StrongFocus);
    controls_.push_back({act.path, made, rows_->rowCount()});
    connect(made, &QAbstractButton::clicked, this, [this, act, made, line] {
        try {
            home_.document.replace(act.make(*home_.document.design()), act.name);
            line->say(made, {});
            emit acted(QString::fromStdString(act.focus));
            if (act.select) emit selectAsked(act.select(*home_.document.design()));
        } catch (const units::BadInput& bad) {
            const auto& fault = bad.faults.front();
            line->say(made, tr("Not done: found %1; allowed is %2.")
                                .arg(bench::translated(fault.found), bench::translated(fault.allowed)));
        }
    });
    return made;
}

void FormView::add(const Act& act) {
    auto* holder = new QWidget(this);
    auto* column = new QVBoxLayout(holder);
    column->setContentsMargins(0, 2, 0, 0);
    column->setSpacing(2);
    auto* line = new FaultLine(holder);
    column->addWidget(button(act, new QPushButton(holder), line), 0, Qt::AlignLeft);
    if (!act.reason.isEmpty()) column->addWidget(mutedLabel(act.reason, holder));
    column->addWidget(line);
    rows_->addRow(holder);
}

void FormView::add(const Table& table) {
    const TableMakers makers{
        [this](const Part& part, FaultLine* line, QWidget* parent) { return field(part, line, parent); },
        [this](const Act& act, FaultLine* line, QWidget* parent) {
            auto* made = new QToolButton(parent);
            made->setAutoRaise(true);
            return button(act, made, line);
        }};
    rows_->addRow(tableView(table, makers, this));
}

void FormView::add(const Said& said) {
    auto* label = mutedLabel({}, this);
    label->setVisible(false);
    rows_->addRow(label);
    said_.emplace_back(label, said);
}

void FormView::showAnswer(const analysis::AnswerPtr& answer) {
    for (const auto& [label, said] : said_) {
        const QString text = answer ? said.sentence(*answer) : QString();
        label->setText(text);
        label->setVisible(!text.isEmpty());
    }
}

}  // namespace editors
