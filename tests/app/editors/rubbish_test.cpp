// SPDX-License-Identifier: GPL-3.0-or-later
// Rubbish typed into every field of every form of every demo design: the design stays, the text stays, the reason
// stands beside it, also after another part was selected.
#include <QApplication>
#include <QClipboard>

#include "design/check.h"
#include "forms_fixture.h"

namespace rubbish_test {

class Rubbish : public Forms, public testing::WithParamInterface<const char*> {
protected:
    Rubbish() : Forms(demoOrEverything(GetParam())), start_(document_.design()) {}

    /// What cannot be right in this field. Free text takes anything that a person would write there, but not a page.
    static QString rubbishFor(const editors::Part& part) {
        const bool free = part.kind == editors::Part::Kind::Text && !part.path.ends_with("/straps") &&
                          !part.path.ends_with("/earths") && !part.path.ends_with("/order");
        return free ? QString(1200, 'x') : QString("12 bananas(");
    }
    void putIn(editors::Field* field, const QString& text) {
        QLineEdit* line = lineOf(field);
        line->setFocus();
        line->selectAll();
        if (text.size() > 100) {
            QApplication::clipboard()->setText(text);
            QTest::keyClick(line, Qt::Key_V, Qt::ControlModifier);
        } else {
            QTest::keyClicks(line, text);
        }
        QTest::keyClick(line, Qt::Key_Return);
    }
    void expectKept(editors::Field* field, const QString& text, const char* when) {
        const std::string where = std::string(GetParam()) + " " + field->part().path + " " + when;
        EXPECT_EQ(field->typed(), text) << where;
        EXPECT_TRUE(field->faulty()) << where;
        EXPECT_TRUE(field->fault().startsWith("Found ") && field->fault().contains("; allowed is ")) << where;
        EXPECT_FALSE(field->faultLine()->sentence().isEmpty()) << where;
        EXPECT_EQ(document_.design(), start_) << where;
        EXPECT_EQ(document_.shown(), start_) << where;
    }
    const design::DesignPtr start_;
    int typed_ = 0, ticked_ = 0;
};

TEST_P(Rubbish, InEveryFieldChangesNothingAndIsKeptWithItsReason) {
    for (int part = 0; part < pane_.parts().count(); ++part) {
        choose(part);
        unfold();
        std::vector<std::string> paths;
        for (auto* f : pane_.fields()) {
            if (lineOf(f) == nullptr) {
                auto* box = qobject_cast<editors::CheckField*>(f)->box();
                const bool before = box->isChecked();
                box->setFocus();
                QTest::keyClicks(box, "bananas(");
                EXPECT_EQ(box->isChecked(), before) << "a check box takes no letters";
                EXPECT_EQ(document_.shown(), start_);
                ++ticked_;
                continue;
            }
            const QString rubbish = rubbishFor(f->part());
            if (f->faulty()) {  // shown in another form too, where it was typed already
                expectKept(f, rubbish, "in a second form");
                paths.push_back(f->part().path);
                continue;
            }
            putIn(f, rubbish);
            expectKept(f, rubbish, "when typed");
            paths.push_back(f->part().path);
            ++typed_;
        }
        choose(part == 1 ? 0 : 1);
        choose(part);
        for (const auto& path : paths) {
            auto* f = fieldAt(path);
            ASSERT_NE(f, nullptr) << path;
            expectKept(f, rubbishFor(f->part()), "after coming back");
        }
    }
    EXPECT_EQ(pane_.wrongTexts().count(), typed_);
    EXPECT_FALSE(document_.canUndo());
    RecordProperty("fields", typed_);
    std::cout << GetParam() << ": " << typed_ << " fields, " << ticked_ << " check boxes\n";
    EXPECT_GT(typed_, 100);
}

TEST_P(Rubbish, EscapeGivesEveryFieldBackToTheDesign) {
    for (int part = 0; part < pane_.parts().count(); ++part) {
        choose(part);
        unfold();
        for (auto* f : pane_.fields()) {
            QLineEdit* line = lineOf(f);
            if (line == nullptr) continue;
            const QString before = f->typed();
            putIn(f, rubbishFor(f->part()));
            ASSERT_TRUE(f->faulty()) << f->part().path;
            QTest::keyClick(line, Qt::Key_Escape);
            EXPECT_FALSE(f->faulty()) << f->part().path;
            EXPECT_EQ(f->typed(), before) << f->part().path;
        }
    }
    EXPECT_EQ(pane_.wrongTexts().count(), 0);
    EXPECT_EQ(document_.shown(), start_);
}

TEST(OneOfEverything, IsADesignWithoutFaults) {
    for (const auto& fault : design::check(*oneOfEverything(), *demoShop(), "it"))
        ADD_FAILURE() << units::sentence(fault);
}

INSTANTIATE_TEST_SUITE_P(Demos, Rubbish, testing::ValuesIn(demoNames), demoName);
INSTANTIATE_TEST_SUITE_P(Widest, Rubbish, testing::Values(everything), demoName);

}  // namespace rubbish_test
