// SPDX-License-Identifier: GPL-3.0-or-later
// Every form of the demos at the width it has in the window: nothing clipped, the keyboard goes through it in order.
// With COILWRIGHT_PICTURES set to a folder, a picture of each is left there.
#include <QDir>

#include "bench/theme.h"
#include "forms_fixture.h"

namespace form_look_test {

class FormLook : public Forms, public testing::WithParamInterface<const char*> {
protected:
    FormLook() : Forms(demo(GetParam())) {}
    void keepPicture(int part) {
        const QString folder = qEnvironmentVariable("COILWRIGHT_PICTURES");
        if (folder.isEmpty()) return;
        const QString file = QStringLiteral("%1/form-%2-%3.png").arg(folder, GetParam()).arg(part);
        QDir().mkpath(folder);
        const QSize size = pane_.size();
        pane_.resize(size.width(), pane_.view().sizeHint().height() + 60);
        QTest::qWait(1);
        EXPECT_TRUE(pane_.grab().save(file)) << file.toStdString();
        pane_.resize(size);
    }
};

TEST_P(FormLook, NoLabelOrButtonIsClipped) {
    for (int part = 0; part < pane_.parts().count(); ++part) {
        choose(part);
        unfold();
        keepPicture(part);
        EXPECT_LE(pane_.view().minimumSizeHint().width(), pane_.width() - 24)
            << pane_.parts().itemText(part).toStdString();
        for (auto* label : pane_.findChildren<QLabel*>())
            if (label->isVisible() && !label->wordWrap()) {
                EXPECT_LE(label->sizeHint().width(), label->width() + 1) << label->text().toStdString();
            }
        for (auto* b : pane_.findChildren<QAbstractButton*>())
            if (b->isVisible()) {
                EXPECT_LE(b->sizeHint().width(), b->width() + 1) << b->text().toStdString();
            }
    }
}

TEST_P(FormLook, TheKeyboardGoesThroughTheFormAsItReads) {
    for (int part = 0; part < pane_.parts().count(); ++part) {
        choose(part);
        unfold();
        QWidget* at = pane_.fields().front()->focusProxy();
        at->setFocus(Qt::TabFocusReason);
        const auto topOf = [&](QWidget* w) { return w->mapTo(&pane_.view(), QPoint(0, 0)); };
        const auto inView = [&](QWidget* w) { return w != nullptr && pane_.view().isAncestorOf(w); };
        int reached = 0;
        for (QPoint before = topOf(at); inView(at); ++reached) {
            QTest::keyClick(at, Qt::Key_Tab);
            QWidget* next = QApplication::focusWidget();
            if (!inView(next) || next == pane_.fields().front()->focusProxy()) break;
            const QPoint now = topOf(next);
            EXPECT_TRUE(now.y() > before.y() - 8 && (now.y() > before.y() + 8 || now.x() > before.x()))
                << next->accessibleName().toStdString();
            before = now;
            at = next;
        }
        EXPECT_GE(reached + 1, static_cast<int>(pane_.fields().size())) << pane_.parts().itemText(part).toStdString();
    }
}

TEST_P(FormLook, EveryControlHasANameAndATip) {
    for (int part = 0; part < pane_.parts().count(); ++part) {
        choose(part);
        unfold();
        EXPECT_FALSE(pane_.fields().empty());
        for (auto* f : pane_.fields()) {
            EXPECT_FALSE(f->part().label.isEmpty());
            EXPECT_GT(f->part().tip.size(), f->part().label.size()) << f->part().label.toStdString();
            ASSERT_NE(f->focusProxy(), nullptr);
            EXPECT_FALSE(f->focusProxy()->accessibleName().isEmpty()) << f->part().label.toStdString();
        }
        for (auto* b : pane_.findChildren<QAbstractButton*>())
            if (b->isVisible()) {
                EXPECT_GT(b->accessibleName().size(), 3) << b->text().toStdString();
            }
    }
}

INSTANTIATE_TEST_SUITE_P(Demos, FormLook, testing::ValuesIn(demoNames), demoName);

}  // namespace form_look_test
