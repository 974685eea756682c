// SPDX-License-Identifier: GPL-3.0-or-later
// Every control of the window that the keyboard can reach has a name for those who do not see it.
#include <gtest/gtest.h>

#include <QAccessible>
#include <QComboBox>
#include <QLineEdit>
#include <QTest>

#include "bench/bench_window.h"
#include "editors/form_pane.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"

namespace accessible_test {

const std::string root = COILWRIGHT_SOURCE_DIR;

class Accessible : public testing::Test {
protected:
    Accessible() {
        const std::string path = root + "/demo-projects/splitter/splitter.coilwright";
        const auto start = exchange::readDesign(exchange::readFile(path), path, *shop_).design;
        window_ = std::make_unique<bench::BenchWindow>(shop_, start, std::vector<std::string>{path});
        window_->show();
        EXPECT_TRUE(QTest::qWaitFor([&] { return !window_->computing(); }, 20000));
    }
    /// The line inside a box is spoken as the box.
    static bool isPartOfAnother(const QWidget* widget) {
        return qobject_cast<const QLineEdit*>(widget) != nullptr &&
               qobject_cast<const QComboBox*>(widget->parentWidget()) != nullptr;
    }
    int expectNames() {
        int seen = 0;
        for (QWidget* widget : window_->findChildren<QWidget*>()) {
            if (!widget->isVisible() || widget->focusPolicy() == Qt::NoFocus || widget->focusProxy() != nullptr ||
                isPartOfAnother(widget))
                continue;
            // A box speaks its choice as its name where the label is told apart from it: ours must be set.
            auto* spoken = QAccessible::queryAccessibleInterface(widget);
            QString name = widget->accessibleName();
            if (name.isEmpty() && spoken != nullptr && qobject_cast<QComboBox*>(widget) == nullptr)
                name = spoken->text(QAccessible::Name);
            EXPECT_GT(name.size(), 1) << widget->metaObject()->className() << " " << widget->objectName().toStdString()
                                      << " in " << widget->parentWidget()->metaObject()->className();
            ++seen;
        }
        return seen;
    }
    std::shared_ptr<const catalog::Catalog> shop_ =
        std::make_shared<const catalog::Catalog>(exchange::loadCatalog({root + "/resources"}));
    std::unique_ptr<bench::BenchWindow> window_;
};

TEST_F(Accessible, EveryControlOfTheWindowHasAName) {
    auto* forms = window_->findChild<editors::FormPane*>();
    ASSERT_NE(forms, nullptr);
    int seen = 0;
    for (int part = 0; part < forms->parts().count(); ++part) {
        emit forms->parts().activated(part);
        for (auto* f : forms->fields()) (void)forms->view().control(f->part().path);
        seen += expectNames();
    }
    EXPECT_GT(seen, 300);
}

}  // namespace accessible_test
