// SPDX-License-Identifier: GPL-3.0-or-later
// A form pane on a demo design, worked with real events.
#pragma once

#include <gtest/gtest.h>

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include "editors/check_field.h"
#include "editors/choice_field.h"
#include "editors/form_pane.h"
#include "editors/text_field.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"

inline const char* const demoNames[] = {"microphone-input", "ribbon-step-up", "direct-box", "line-unit", "splitter"};

/// A demo's name as the name of a test.
inline std::string demoName(const testing::TestParamInfo<const char*>& of) {
    std::string name = of.param;
    std::erase(name, '-');
    return name;
}

inline std::shared_ptr<const catalog::Catalog> demoShop() {
    static const auto all =
        std::make_shared<const catalog::Catalog>(exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"}));
    return all;
}
inline design::DesignPtr demo(const std::string& name) {
    const std::string path = COILWRIGHT_SOURCE_DIR "/demo-projects/" + name + "/" + name + ".coilwright";
    return exchange::readDesign(exchange::readFile(path), path, *demoShop()).design;
}

class Forms : public testing::Test {
protected:
    explicit Forms(design::DesignPtr start = demo("splitter"))
        : document_(demoShop(), std::move(start)), pane_(document_, selection_) {
        pane_.resize(460, 500);
        pane_.show();
        QTest::qWait(1);
    }
    void choose(int part) {
        pane_.parts().setCurrentIndex(part);
        emit pane_.parts().activated(part);
        QTest::qWait(1);
    }
    /// Opens every group of the form, so that all of its fields can be typed into.
    void unfold() {
        for (auto* f : pane_.fields()) (void)pane_.view().control(f->part().path);
        QTest::qWait(1);
    }
    editors::Field* anyField(const QString& label) {
        for (auto* f : pane_.fields())
            if (f->part().label == label) return f;
        return nullptr;
    }
    editors::Field* fieldAt(const std::string& path) {
        return qobject_cast<editors::Field*>(pane_.view().control(path));
    }
    editors::TextField* field(const QString& label) { return qobject_cast<editors::TextField*>(anyField(label)); }
    /// The line that letters go into; null for a check box.
    static QLineEdit* lineOf(editors::Field* field) {
        if (auto* text = qobject_cast<editors::TextField*>(field)) return text->line();
        if (auto* choice = qobject_cast<editors::ChoiceField*>(field)) return choice->box()->lineEdit();
        return nullptr;
    }
    static void type(editors::Field* field, const QString& text) {
        QLineEdit* line = lineOf(field);
        line->setFocus();
        line->selectAll();
        QTest::keyClick(line, Qt::Key_Delete);
        QTest::keyClicks(line, text);
        QTest::keyClick(line, Qt::Key_Return);
    }
    QAbstractButton* button(const QString& text) {
        for (auto* b : pane_.findChildren<QAbstractButton*>())
            if (b->text() == text && b->isVisible()) return b;
        return nullptr;
    }
    document::Document document_;
    document::Selection selection_;
    editors::FormPane pane_;
};
