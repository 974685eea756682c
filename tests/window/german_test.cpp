// SPDX-License-Identifier: GPL-3.0-or-later
// Every word that a window shows comes out of the table of sentences: a language whose letters are no Latin ones is put
// on, and what still reads as English was never translated. In true German no label is cut off.
#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QGroupBox>
#include <QHeaderView>
#include <QLabel>
#include <QPlainTextEdit>
#include <QTabBar>
#include <QTest>

#include "analysis/figure_names.h"
#include "bench/bench_window.h"
#include "bench/language.h"
#include "bench/paper_window.h"
#include "bench/revision_window.h"
#include "bench/seek_window.h"
#include "bench/spread_window.h"
#include "bench/start_page.h"
#include "bench/units_window.h"
#include "commands/places.h"
#include "compare/pair_window.h"
#include "cut/coil_edits.h"
#include "design/edit.h"
#include "editors/form_pane.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/winder.h"
#include "handbook/handbook_window.h"
#include "handbook/pages.h"
#include "room_for_text.h"
#include "winding/winding_window.h"

namespace german_test {

bench::Sentences german() {
    const std::string file = COILWRIGHT_SOURCE_DIR "/resources/languages/de.json";
    return bench::readLanguage(exchange::readFile(file), file).sentences;
}

/// The same words in letters that no source is written in; placeholders and marks of markup stay.
QString strange(const QString& own) {
    static const QRegularExpression kept(QStringLiteral("%(?:[1-9]|n)|\\{[a-z]+[0-9]*\\}|<[^>]*>"));
    QString text;
    qsizetype from = 0;
    const auto changed = [](QString part) {
        for (QChar& c : part)
            if (c.unicode() < 128 && c.isLetter()) c = QChar(static_cast<char16_t>(c.unicode() + 0xFEE0));
        return part;
    };
    auto each = kept.globalMatch(own);
    while (each.hasNext()) {
        const auto found = each.next();
        text += changed(own.mid(from, found.capturedStart() - from)) + found.captured();
        from = found.capturedEnd();
    }
    return text + changed(own.mid(from));
}

bench::Sentences strangeSentences() {
    bench::Sentences all = german();
    for (auto& [english, own] : all) own = strange(own);
    return all;
}

class GermanTest : public testing::Test {
protected:
    void speak(const bench::Sentences& sentences) {
        language = std::make_unique<bench::Language>(sentences);
        QCoreApplication::installTranslator(language.get());
    }
    void open(const std::string& demo, const QSize& size = {1280, 800}) {
        for (const std::string& path : commands::demoDesigns(where))
            if (path.find(demo) != std::string::npos) {
                design = exchange::readDesign(exchange::readFile(path), path, *shop).design;
                file = path;
            }
        ASSERT_NE(design, nullptr);
        window = std::make_unique<bench::BenchWindow>(shop, design, commands::demoDesigns(where),
                                                      commands::resourceFolders(where));
        window->resize(size);
        window->show();
        settle();
    }
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !window->computing() && window->changes().settled(); }, 30000));
        QTest::qWait(30);  // queued replots
    }
    template <class Window>
    Window* trigger(bench::Act act) {
        window->actions()[act].trigger();
        auto* found = window->findChild<Window*>();
        EXPECT_NE(found, nullptr);
        return found;
    }
    commands::Places where = commands::places();
    std::shared_ptr<const catalog::Catalog> shop =
        std::make_shared<const catalog::Catalog>(commands::shopCatalog(where));
    design::DesignPtr design;
    std::string file;
    std::unique_ptr<bench::Language> language;
    std::unique_ptr<bench::BenchWindow> window;  // goes before the language that it speaks
};

/// Collects what a window shows and says, each with where it was found.
class Shown {
public:
    void walk(QWidget& top) {
        widget(top);
        for (QWidget* one : top.findChildren<QWidget*>()) widget(*one);
        for (const QAction* one : top.findChildren<QAction*>()) action(*one);
    }
    void add(const QString& text, const QString& from) {
        if (!text.isEmpty()) all.emplace(text, from);
    }
    std::map<QString, QString> all;

private:
    void action(const QAction& one) {
        add(one.text(), "action");
        add(one.toolTip(), "tip of an action");
        add(one.statusTip(), "status tip");
    }
    void widget(QWidget& one) {
        const QString kind = one.metaObject()->className();
        add(one.windowTitle(), "title of " + kind);
        add(one.toolTip(), "tip of " + kind);
        add(one.statusTip(), "status tip of " + kind);
        add(one.accessibleName(), "name of " + kind);
        // A paper speaks its own language, and a winding program is for a machine.
        if (!(one.window()->inherits("bench::PaperWindow") && kind == "QLabel"))
            add(one.accessibleDescription(), "description of " + kind);
        // What a row of the test plan says is the paper's, in English alone.
        if (one.objectName() == QStringLiteral("planWords")) return;
        for (const char* property : {"text", "title", "placeholderText", "plainText", "prefix", "suffix"})
            if (!qobject_cast<QTextBrowser*>(&one))  // the handbook's pages
                add(one.property(property).toString(), QString::fromLatin1(property) + " of " + kind);
        if (const auto* box = qobject_cast<QComboBox*>(&one))
            for (int k = 0; k < box->count(); ++k) add(box->itemText(k), "choice of " + one.accessibleName());
        if (const auto* tabs = qobject_cast<QTabBar*>(&one))
            for (int k = 0; k < tabs->count(); ++k) add(tabs->tabText(k), "tab");
        if (const auto* view = qobject_cast<QAbstractItemView*>(&one))
            if (view->model() && view->accessibleName() != strange(QStringLiteral("Sätze")) &&
                !view->inherits("QComboBoxListView") && !view->inherits("QHeaderView"))
                model(*view->model(), kind);
    }
    void model(const QAbstractItemModel& one, const QString& kind) {
        constexpr int most = 200;  // of a winding program's blocks, all alike
        for (int c = 0; c < one.columnCount(); ++c) {
            add(one.headerData(c, Qt::Horizontal).toString(), "head of " + kind);
            for (int r = 0; r < std::min(most, one.rowCount()); ++r)
                for (const int role : {int{Qt::DisplayRole}, int{Qt::ToolTipRole}, int{Qt::AccessibleTextRole}})
                    add(one.index(r, c).data(role).toString(), "cell of " + kind);
        }
    }
};

/// Words that are nobody's language: names in the design and its materials, units, signs of formulas.
class Names {
public:
    Names(const design::Design& d, const catalog::Catalog& shop, const std::string& file) {
        for (const std::string& text : {d.name, d.partNumber, d.revision, d.note, d.brief.customer, d.brief.use,
                                        d.brief.isolation, d.brief.note, file})
            add(text);
        for (const auto& t : d.terminals) add(t.name + " " + t.leadColour);
        for (const auto& w : d.windings) add(w.name);
        for (const auto& p : d.ports) add(p.name);
        for (const auto& h : d.hookUps) add(h.name + " " + h.note);
        for (const auto& s : d.brief.said) add(s.subject + " " + s.words);
        for (const auto& place : d.coil)
            for (const auto& item : place.order) {
                if (const auto* section = item.section()) add(section->label() + " " + section->hand);
                if (const auto* shield = item.shield()) add(shield->name);
            }
        addKeys(d);
        for (const char* demo : {"direct box", "line unit", "ribbon step up", "splitter", "microphone input"})
            add(demo);
        for (const auto& [key, entry] : shop.sheets) add(key);
        for (const auto& [key, entry] : shop.alloys) add(key);
        for (const auto& [key, entry] : shop.wires) add(key);
        for (const auto& [key, entry] : shop.bobbins) add(key);
        for (const auto& [key, entry] : shop.insulation) add(key);
        for (const auto& [key, entry] : shop.fittings) add(key);
        for (const auto& [key, entry] : shop.sundries) add(key);
        add("Hz mHz kHz MHz GHz ms us ns mm cm um nm dB dBu dBV mV uV nV kV mA uA nA mH uH nH fF pF nF uF ohm kOhm kg "
            "rad "
            "deg AWG mil "
            "Wb mT uT mWb Pa min IEC ISO EMF PDF CSV SVG DejaVu Coilwright coilwright Deutsch English");
    }
    /// Keys of files that stand among the choices: traces, figures, nodes.
    void addKeys(const design::Design& d) {
        for (const auto& kind : analysis::traceKinds()) add(kind.name);
        for (const auto& figure : analysis::figureNames(d)) add(figure);
        for (const auto& promise : d.brief.promises) add(promise.note);
        add("core earth");
    }
    void add(const std::string& text) {
        static const QRegularExpression word(QStringLiteral("[A-Za-z]{2,}"));
        auto each = word.globalMatch(QString::fromStdString(text));
        while (each.hasNext()) known_.insert(each.next().captured());
    }
    /// The words of a text that nobody translated.
    [[nodiscard]] QStringList untranslated(const QString& text) const {
        // Keys of figures and paths are what files call things.
        static const QRegularExpression key(QStringLiteral("\\S*[_/]\\S*|\\S+\\.\\S+|<[^>]*>|&[a-z]+;"));
        static const QRegularExpression word(QStringLiteral("[A-Za-z]{2,}"));
        QString rest = text;
        rest.remove(key).remove('&');
        QStringList words;
        auto each = word.globalMatch(rest);
        while (each.hasNext())
            if (const QString one = each.next().captured(); !known_.contains(one)) words << one;
        return words;
    }

private:
    QSet<QString> known_;
};

void expectNoEnglish(const Shown& shown, const Names& names, int least) {
    EXPECT_GE(shown.all.size(), static_cast<std::size_t>(least));
    for (const auto& [text, from] : shown.all)
        if (const QStringList words = names.untranslated(text); !words.isEmpty())
            ADD_FAILURE() << from.toStdString() << ": " << words.join(' ').toStdString()
                          << " in: " << text.toStdString();
}

TEST_F(GermanTest, TheBenchAndItsFormsSayNothingInEnglish) {
    speak(strangeSentences());
    for (const char* demo : {"microphone-input", "splitter"}) {
        open(demo);
        Shown shown;
        shown.walk(*window);
        auto* forms = window->findChild<editors::FormPane*>();
        ASSERT_NE(forms, nullptr);
        for (int part = 0; part < forms->parts().count(); ++part) {
            emit forms->parts().activated(part);
            for (auto* field : forms->fields()) (void)forms->view().control(field->part().path);
            shown.walk(*forms);
        }
        expectNoEnglish(shown, Names(*design, *shop, file), 300);
        window.reset();
    }
}

TEST_F(GermanTest, AnEditAndWhatGovernsAPromiseAreSaidInGerman) {
    speak(strangeSentences());
    open("microphone-input");
    window->document().replace(design::changed(*design,
                                               [](design::Design& d) {
                                                   for (auto& item : d.coil.front().order)
                                                       if (auto* s = item.section()) s->turns.value += 10;
                                               }),
                               strange("Windungen"));
    settle();
    Shown shown;
    shown.walk(*window);
    ASSERT_TRUE(window->answer()->promises.front().mask);  // a mask and a figure
    for (const std::size_t k : {0U, 1U}) {
        emit window->promises().pointed(window->answer()->promises[k]);
        ASSERT_TRUE(QTest::qWaitFor([this] { return !window->ranking(); }, 240000));
        shown.add(window->message(), "message");
    }
    expectNoEnglish(shown, Names(*design, *shop, file), 100);
}

TEST_F(GermanTest, TheOtherWindowsSayNothingInEnglish) {
    speak(strangeSentences());
    open("microphone-input");
    window->openFile(QString::fromStdString(file));
    settle();
    Shown shown;
    Names names(*design, *shop, file);
    window->showStart();
    shown.walk(*window);
    for (const std::string& path : commands::demoDesigns(where)) {
        const auto demo = exchange::readDesign(exchange::readFile(path), path, *shop).design;
        for (const std::string& text : {demo->name, demo->brief.use, demo->note, path}) names.add(text);
    }
    window->showKeys();
    trigger<bench::RevisionWindow>(bench::Act::Revisions);
    trigger<bench::SeekWindow>(bench::Act::Seek);
    trigger<bench::SpreadWindow>(bench::Act::Spread);
    trigger<winding::WindingWindow>(bench::Act::WindingProgram);
    trigger<handbook::HandbookWindow>(bench::Act::Handbook);
    auto* papers = trigger<bench::PaperWindow>(bench::Act::Papers);
    ASSERT_TRUE(QTest::qWaitFor([papers] { return !papers->busy(); }, 60000));
    auto* units = trigger<bench::UnitsWindow>(bench::Act::Units);
    ASSERT_TRUE(QTest::qWaitFor([units] { return !units->busy(); }, 240000));
    ASSERT_GT(units->entry().table().model().rowCount(), 0);
    for (const std::string& winder : exchange::winderNames(commands::resourceFolders(where))) names.add(winder);
    for (const auto& page : handbook::pages(handbook::folderIn(commands::resourceFolders(where))))
        names.add(page.title.toStdString());
    shown.walk(*window);
    expectNoEnglish(shown, names, 400);
}

TEST_F(GermanTest, NoLabelIsCutOff) {
    speak(german());
    open("splitter");
    room_for_text::expectRoomForEveryText(*window, 20);
    EXPECT_EQ(window->size(), QSize(1280, 800));  // nothing asks for more
    const auto* more = window->findChild<QWidget*>(QStringLiteral("qt_toolbar_ext_button"));
    EXPECT_TRUE(more == nullptr || !more->isVisible()) << "the head hides an act";
    auto* forms = window->findChild<editors::FormPane*>();
    for (int part = 0; part < forms->parts().count(); ++part) {
        emit forms->parts().activated(part);
        for (auto* field : forms->fields()) (void)forms->view().control(field->part().path);
        QTest::qWait(1);
        room_for_text::expectRoomForEveryText(*forms, 1);
    }
    const QString folder = COILWRIGHT_BUILD_DIR "/pictures";
    ASSERT_TRUE(QDir().mkpath(folder));
    for (const bench::Act act :
         {bench::Act::Revisions, bench::Act::Seek, bench::Act::Spread, bench::Act::WindingProgram, bench::Act::Papers,
          bench::Act::Units, bench::Act::Handbook, bench::Act::Keys}) {
        window->actions()[act].trigger();
        QTest::qWait(50);
    }
    int windows = 0;
    for (auto* other : window->findChildren<QWidget*>()) {
        if (!other->isWindow() || !other->isVisible() || other->inherits("QMenu")) continue;
        room_for_text::expectRoomForEveryText(*other, 0);
        ASSERT_TRUE(other->grab().save(folder + QStringLiteral("/german_") + QString::number(++windows) + ".png"));
    }
    EXPECT_EQ(windows, 8);
    ASSERT_TRUE(window->grab().save(folder + QStringLiteral("/german.png")));
}

}  // namespace german_test
