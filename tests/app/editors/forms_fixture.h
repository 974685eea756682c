// SPDX-License-Identifier: GPL-3.0-or-later
// A form pane on a demo design, worked with real events.
#pragma once

#include <gtest/gtest.h>

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include "design/edit.h"
#include "editors/check_field.h"
#include "editors/choice_field.h"
#include "editors/form_pane.h"
#include "editors/text_field.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"

inline const char* const demoNames[] = {"microphone-input", "ribbon-step-up", "direct-box", "line-unit", "splitter"};
inline const char* const everything = "everything";

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

/// A demo with one of everything that forms can show: foil, tap, wound shield, impedance table, compound, two alloys.
inline design::DesignPtr oneOfEverything() {
    return design::changed(*demo("splitter"), [](design::Design& d) {
        d.terminals.emplace_back();
        d.terminals.back().name = "tap";
        d.windings[0].taps.emplace_back();
        d.windings[0].taps[0].turns = 50;
        d.windings[0].taps[0].terminal = "tap";
        d.windings[1].wire = {};
        d.windings[1].foil.emplace();
        for (auto& item : d.coil[0].order)
            if (auto* s = item.shield(); s != nullptr && s->name == "foil 1") {
                s->form = design::ShieldForm::Winding;
                s->wire = "AWG 36 single";
            }
        d.core.stack.push_back(d.core.stack[0]);
        for (auto& sheets : d.core.stack) sheets.share = 0.5;
        d.filling.emplace().compound = "epoxy";
        d.conditions.directCurrents.emplace_back();
        d.conditions.directCurrents[0].winding = "P";
        auto& source = d.hookUps[0].ports[0];
        source.through.reset();
        source.table = {{20, 150, 0}, {20e3, 150, 35}};
    });
}
inline design::DesignPtr demoOrEverything(const std::string& name) {
    return name == "everything" ? oneOfEverything() : demo(name);
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
