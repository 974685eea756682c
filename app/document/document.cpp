// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/document.h"

#include <QFileInfo>
#include <vector>

#include "design/check.h"
#include "exchange/design_json.h"
#include "exchange/write_file.h"

namespace document {

struct Document::State {
    struct Step {
        design::DesignPtr design;
        QString act;  ///< what led from the step before to this one
    };
    std::shared_ptr<const catalog::Catalog> shop;
    std::vector<Step> steps;  ///< never empty
    std::size_t at = 0;
    design::DesignPtr tried;  ///< null: nothing is being tried out
    design::DesignPtr saved;  ///< as it stands in the file; null: in none
    QString path;
};

namespace {

bool same(const design::DesignPtr& a, const design::DesignPtr& b) {
    return a == b || (a && b && *a == *b);
}

void refuseFaults(const design::Design& design, const catalog::Catalog& shop, const QString& path) {
    const QString file = path.isEmpty() ? QString::fromStdString(design.name) : QFileInfo(path).fileName();
    if (auto faults = design::check(design, shop, file.toStdString()); !faults.empty())
        throw units::BadInput(std::move(faults));
}

}  // namespace

Document::Document(std::shared_ptr<const catalog::Catalog> shop, design::DesignPtr start, QObject* parent)
    : QObject(parent), state_(std::make_shared<State>()) {
    Q_ASSERT(shop && start);
    state_->shop = std::move(shop);
    state_->saved = start;
    state_->steps.push_back({std::move(start), {}});
}

const design::DesignPtr& Document::design() const noexcept {
    return state_->steps[state_->at].design;
}

const design::DesignPtr& Document::shown() const noexcept {
    return state_->tried ? state_->tried : design();
}

const std::shared_ptr<const catalog::Catalog>& Document::shop() const noexcept {
    return state_->shop;
}

void Document::replace(design::DesignPtr next, const QString& act) {
    if (same(next, design())) return endPreview();
    refuseFaults(*next, *state_->shop, state_->path);
    State& s = *state_;
    s.tried.reset();
    s.steps.resize(s.at + 1);
    s.steps.push_back({std::move(next), act});
    s.at = s.steps.size() - 1;
    emit changed();
    emit shownChanged();
    emit stateChanged();
}

void Document::preview(design::DesignPtr next) {
    if (same(next, shown())) return;
    if (same(next, design())) return endPreview();
    refuseFaults(*next, *state_->shop, state_->path);
    const bool first = !state_->tried;
    state_->tried = std::move(next);
    emit shownChanged();
    if (first) emit stateChanged();
}

void Document::endPreview() {
    if (!state_->tried) return;
    state_->tried.reset();
    emit shownChanged();
    emit stateChanged();
}

bool Document::canUndo() const noexcept {
    return state_->tried || state_->at > 0;
}

bool Document::canRedo() const noexcept {
    return state_->at + 1 < state_->steps.size();
}

QString Document::undoText() const {
    if (state_->tried) return tr("what is being tried");
    return state_->at > 0 ? state_->steps[state_->at].act : QString();
}

QString Document::redoText() const {
    return canRedo() ? state_->steps[state_->at + 1].act : QString();
}

void Document::undo() {
    if (!canUndo()) return;
    // Something typed or dragged but not yet done is what the designer means by "the last act".
    if (state_->tried)
        state_->tried.reset();
    else
        --state_->at;
    emit changed();
    emit shownChanged();
    emit stateChanged();
}

void Document::redo() {
    if (!canRedo()) return;
    state_->tried.reset();
    ++state_->at;
    emit changed();
    emit shownChanged();
    emit stateChanged();
}

QString Document::path() const {
    return state_->path;
}

bool Document::modified() const noexcept {
    return !same(state_->saved, design());
}

void Document::open(design::DesignPtr design, const QString& path) {
    State& s = *state_;
    s.path = path;
    s.saved = design;
    s.tried.reset();
    s.steps = {State::Step{std::move(design), {}}};
    s.at = 0;
    emit opened();
    emit changed();
    emit shownChanged();
    emit stateChanged();
}

void Document::adopt(design::DesignPtr inFile, const QString& act) {
    replace(inFile, act);
    state_->saved = std::move(inFile);
    emit stateChanged();
}

void Document::setUnsaved() {
    state_->saved.reset();
    emit stateChanged();
}

void Document::save(const QString& path) {
    State& s = *state_;
    exchange::writeFile(path.toStdString(), exchange::writeDesign(*design(), *s.shop));
    s.path = path;
    s.saved = design();
    emit stateChanged();
}

}  // namespace document
