// SPDX-License-Identifier: GPL-3.0-or-later
// The window's choice of a language.
#include <QActionGroup>

#include "bench/bench_window.h"
#include "bench/language.h"

namespace bench {

namespace {

constexpr const char* fromNextStart =
    QT_TRANSLATE_NOOP("bench", "The window speaks English from its next start on; papers have a choice of their own.");

}  // namespace

void BenchWindow::showLanguages() {
    QMenu& menu = actions_->languageMenu();
    auto* group = new QActionGroup(this);
    const auto offer = [this, &menu, group](const std::string& key, const QString& name) {
        QAction* choice = menu.addAction(name);
        choice->setCheckable(true);
        choice->setChecked(memory_.language == key);
        group->addAction(choice);
        connect(choice, &QAction::triggered, this, [this, key] { speak(key); });
    };
    offer({}, tr("As the &desktop"));
    offer("en", QStringLiteral("English"));
    // A table is read to know its language's name: not before someone looks.
    connect(
        &menu, &QMenu::aboutToShow, this,
        [this, offer] {
            try {
                for (const auto& [key, name] : windowLanguages(resources_)) offer(key, name);
            } catch (const std::exception& failure) {
                say(translated(failure.what()));
            }
        },
        Qt::SingleShotConnection);
}

/// Words stand in widgets that are already made, so that the choice is told in the new language and waits.
void BenchWindow::speak(const std::string& language) {
    memory_.language = language;
    keep(memory_);
    try {
        const auto next = windowLanguage(language, resources_, memoryPath().toStdString());
        const QString own = next ? next->translate("bench", fromNextStart) : QString();
        say(own.isEmpty() ? QString::fromUtf8(fromNextStart) : own);
    } catch (const std::exception& failure) {
        say(translated(failure.what()));
    }
}

}  // namespace bench
