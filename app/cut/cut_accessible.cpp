// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/cut_accessible.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <QPointer>
#include <vector>

#include "cut/cut_view.h"

namespace cut {

namespace {

/// One item of the coil, by its place in the walk from the core outward through all chambers.
class ItemAccess : public QAccessibleInterface, public QAccessibleActionInterface {
public:
    ItemAccess(CutView* view, int index) : view_(view), index_(index) {}

    [[nodiscard]] bool isValid() const override { return view_ && index_ < view_->itemCount(); }
    [[nodiscard]] QObject* object() const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* parent() const override {
        return QAccessible::queryAccessibleInterface(view_.data());
    }
    [[nodiscard]] QAccessibleInterface* child(int) const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    [[nodiscard]] int childCount() const override { return 0; }
    [[nodiscard]] int indexOfChild(const QAccessibleInterface*) const override { return -1; }
    [[nodiscard]] QAccessible::Role role() const override { return QAccessible::ListItem; }
    void setText(QAccessible::Text, const QString&) override {}

    [[nodiscard]] QString text(QAccessible::Text kind) const override {
        if (!isValid()) return {};
        if (kind == QAccessible::Name) return view_->itemSentenceAt(index_);
        return kind == QAccessible::Description ? view_->itemTipAt(index_) : QString();
    }
    [[nodiscard]] QRect rect() const override {
        if (!isValid()) return {};
        const QRect own = view_->itemRect(view_->itemIndexAt(index_)).toAlignedRect();
        return {view_->mapToGlobal(own.topLeft()), own.size()};
    }
    [[nodiscard]] QAccessible::State state() const override {
        QAccessible::State state;
        state.focusable = state.selectable = true;
        if (!isValid()) {
            state.invalid = true;
            return state;
        }
        state.selected = view_->selectedItem() == index_;
        state.focused = state.selected && view_->hasFocus();
        return state;
    }
    void* interface_cast(QAccessible::InterfaceType type) override {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this) : nullptr;
    }
    [[nodiscard]] QStringList actionNames() const override { return {setFocusAction(), pressAction()}; }
    void doAction(const QString& name) override {
        if (!isValid()) return;
        view_->selectItem(index_);
        if (name == setFocusAction()) view_->setFocus(Qt::OtherFocusReason);
    }
    [[nodiscard]] QStringList keyBindingsForAction(const QString&) const override { return {}; }

private:
    QPointer<CutView> view_;
    int index_;
};

class CutAccess : public QAccessibleWidget {
public:
    explicit CutAccess(CutView* view) : QAccessibleWidget(view, QAccessible::List), view_(view) {}
    ~CutAccess() override {
        for (const QAccessible::Id id : children_) QAccessible::deleteAccessibleInterface(id);
    }
    [[nodiscard]] int childCount() const override { return view_ ? view_->itemCount() : 0; }
    [[nodiscard]] QAccessibleInterface* child(int index) const override {
        if (index < 0 || index >= childCount()) return nullptr;
        while (static_cast<int>(children_.size()) <= index)
            children_.push_back(
                QAccessible::registerAccessibleInterface(new ItemAccess(view_, static_cast<int>(children_.size()))));
        return QAccessible::accessibleInterface(children_[static_cast<std::size_t>(index)]);
    }
    [[nodiscard]] int indexOfChild(const QAccessibleInterface* one) const override {
        for (int k = 0; k < childCount(); ++k)
            if (child(k) == one) return k;
        return -1;
    }
    [[nodiscard]] QAccessibleInterface* childAt(int x, int y) const override {
        for (int k = 0; k < childCount(); ++k)
            if (child(k)->rect().contains(x, y)) return child(k);
        return nullptr;
    }
    [[nodiscard]] QAccessibleInterface* focusChild() const override {
        return view_ && view_->hasFocus() ? child(view_->selectedItem()) : nullptr;
    }

private:
    QPointer<CutView> view_;
    mutable std::vector<QAccessible::Id> children_;
};

QAccessibleInterface* makeAccess(const QString&, QObject* object) {
    auto* view = qobject_cast<CutView*>(object);
    return view != nullptr ? new CutAccess(view) : nullptr;
}

}  // namespace

void announceCuts() {
    QAccessible::installFactory(makeAccess);  // the same function twice is taken once
}

}  // namespace cut
