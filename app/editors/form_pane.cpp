// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/form_pane.h"

#include <QLineEdit>
#include <QScrollBar>
#include <QSignalBlocker>
#include <QTimer>
#include <QVBoxLayout>

#include "editors/carried_path.h"

namespace editors {

using Which = document::WholePart::Which;

namespace {

QString nameOf(const design::Item& item) {
    if (const auto* s = item.section()) return QObject::tr("section %1").arg(QString::fromStdString(s->label()));
    if (const auto* s = item.shield()) return QObject::tr("shield %1").arg(QString::fromStdString(s->name));
    return QObject::tr("insulation");
}

QLineEdit* lineOf(QWidget* control) {
    QWidget* editor = control->focusProxy() != nullptr ? control->focusProxy() : control;
    if (auto* box = qobject_cast<QComboBox*>(editor)) return box->lineEdit();
    return qobject_cast<QLineEdit*>(editor);
}

}  // namespace

FormPane::FormPane(document::Document& document, document::Selection& selection, QWidget* parent)
    : QWidget(parent),
      document_(document),
      selection_(selection),
      parts_(new QComboBox(this)),
      scroll_(new QScrollArea(this)),
      design_(document.design()) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(12, 8, 12, 8);
    layout->addWidget(parts_);
    layout->addWidget(scroll_, 1);
    parts_->setAccessibleName(tr("part of the design"));
    parts_->setToolTip(tr("Every part of the design has a form; this list reaches them all."));
    scroll_->setWidgetResizable(true);
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll_->setFocusPolicy(Qt::NoFocus);
    connect(parts_, &QComboBox::activated, this,
            [this](int at) { selection_.select(listed_[static_cast<std::size_t>(at)]); });
    connect(&selection_, &document::Selection::changed, this, [this] {
        if (coming_) return;
        for (auto* f : fields())
            if (f->focusProxy()->hasFocus()) f->finish();  // what was being typed is not lost
        if (!coming_) rebuild({});
    });
    connect(&document_, &document::Document::opened, this, [this] { another_ = true; });
    connect(&document_, &document::Document::changed, this, &FormPane::designChanged);
    listParts();
    rebuild({});
}

/// A field that loses the keyboard by being deleted has nobody to tell: what it would tell is gone by then.
FormPane::~FormPane() {
    view_->retire();
}

void FormPane::designChanged() {
    if (another_) {
        another_ = false;
        wrong_.clear();
        listParts();
        return rebuild({});
    }
    const auto before = design_;
    wrong_.follow(document_.design());
    followRenamedWinding(*before);
    listParts();
    const bool other = shapeOf(formOf(*document_.design(), selection_.selected(), document_.shop())) != shape_;
    if (other) return rebuildSoon();
    design_ = document_.design();
}

/// The selected winding has another name now: it is selected still.
void FormPane::followRenamedWinding(const design::Design& before) {
    const auto* part = std::get_if<document::WindingPart>(&selection_.selected());
    const auto& now = *document_.design();
    if (part == nullptr || design::winding(now, part->name) != nullptr) return;
    for (std::size_t k = 0; k < before.windings.size() && before.windings.size() == now.windings.size(); ++k) {
        if (before.windings[k].name != part->name) continue;
        coming_ = true;  // the field that renamed it is still at work
        selection_.select(document::WindingPart{now.windings[k].name});
        coming_ = false;
        return;
    }
}

/// After the field or button that made the change has finished with it.
void FormPane::rebuildSoon() {
    if (coming_) return;
    coming_ = true;
    QTimer::singleShot(0, this, [this] {
        coming_ = false;
        Spot here = spot();
        if (!focus_.isEmpty())
            here.path = focus_.toStdString();
        else if (const auto carried = carriedPath(*design_, *document_.design(), here.path);
                 !here.path.empty() && carried)
            here.path = *carried;
        focus_.clear();
        rebuild(here);
    });
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
    add(tr("brief and promises"), document::WholePart{Which::Brief});
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
    add(tr("tolerances"), document::WholePart{Which::Tolerances});
    follow();
}

void FormPane::follow() {
    const auto at = std::find(listed_.begin(), listed_.end(), selection_.selected());
    const QSignalBlocker quiet(parts_);
    parts_->setCurrentIndex(at == listed_.end() ? 1 : static_cast<int>(at - listed_.begin()));
}

FormPane::Spot FormPane::spot() const {
    Spot here;
    here.scrolled = scroll_->verticalScrollBar()->value();
    here.path = view_->pathWithKeyboard();
    QWidget* control = here.path.empty() ? nullptr : view_->control(here.path);
    if (const auto* line = control == nullptr ? nullptr : lineOf(control)) {
        here.cursor = line->cursorPosition();
        here.from = line->selectionStart();
        here.length = static_cast<int>(line->selectedText().size());
    }
    return here;
}

void FormPane::putBack(const Spot& spot) {
    scroll_->verticalScrollBar()->setValue(spot.scrolled);
    QWidget* control = spot.path.empty() ? nullptr : view_->control(spot.path);
    if (control == nullptr) return;
    control->setFocus(Qt::OtherFocusReason);
    scroll_->ensureWidgetVisible(control, 0, 24);
    auto* line = lineOf(control);
    if (line == nullptr) return;
    if (spot.from >= 0)
        line->setSelection(spot.from, spot.length);
    else
        line->setCursorPosition(spot.cursor);
}

void FormPane::rebuild(const Spot& spot) {
    if (view_ != nullptr) view_->retire();  // first: a list that closes may commit what is typed elsewhere
    follow();
    design_ = document_.design();
    const Form form = formOf(*design_, selection_.selected(), document_.shop());
    shape_ = shapeOf(form);
    QWidget* old = scroll_->takeWidget();
    view_ = new FormView(form, {document_, wrong_}, folds_);
    connect(view_, &FormView::acted, this, [this](const QString& focus) { focus_ = focus; });
    connect(view_, &FormView::selectAsked, this, [this](const document::Selected& part) {
        QTimer::singleShot(0, this,
                           [this, part] { selection_.select(part); });  // the button that asks is still at work
    });
    for (const Field* field : fields()) connect(field, &Field::faultChanged, this, &FormPane::faultsChanged);
    view_->showAnswer(answer_);
    scroll_->setWidget(view_);
    if (old != nullptr) {
        old->hide();
        old->deleteLater();
    }
    scroll_->widget()->layout()->activate();
    if (!fields().empty()) setFocusProxy(fields().front());
    putBack(spot);
    emit faultsChanged();
}

void FormPane::showAnswer(analysis::AnswerPtr answer) {
    answer_ = std::move(answer);
    view_->showAnswer(answer_);
}

}  // namespace editors
