// SPDX-License-Identifier: GPL-3.0-or-later
// One program: a window when called bare or with a design, a command line when called with a verb.
#include <QApplication>
#include <QFileInfo>
#include <QHashSeed>
#include <iostream>
#include <memory>

#include "bench/bench_window.h"
#include "bench/language.h"
#include "bench/memory.h"
#include "commands/places.h"
#include "commands/run.h"
#include "commands/verb.h"
#include "units/fault.h"

namespace {

/// What the desktop's libraries say is no result of ours; a command's one sentence stands alone on standard error.
void quiet(QtMsgType kind, const QMessageLogContext&, const QString& text) {
    if (kind == QtCriticalMsg || kind == QtFatalMsg) std::cerr << text.toStdString() << '\n';
}

int runCommand(int argc, char** argv, const std::vector<std::string>& arguments) {
    if (!commands::needsApplication(arguments)) return commands::run(arguments, std::cout, std::cerr);
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    qInstallMessageHandler(quiet);
    const QApplication application(argc, argv);
    return commands::run(arguments, std::cout, std::cerr);
}

/// The language that was chosen, over the whole program; English where its table is gone or spoilt.
struct Speech {
    explicit Speech(const std::vector<std::string>& folders) {
        try {
            language = bench::windowLanguage(bench::recalled().language, folders, bench::memoryPath().toStdString());
            if (language) QCoreApplication::installTranslator(language.get());
        } catch (const units::BadInput& bad) {
            why = QString::fromUtf8(bad.what());
        }
    }
    std::unique_ptr<bench::Language> language;
    QString why;
};

int showWindow(int argc, char** argv, const std::vector<std::string>& arguments) {
    const bool chosenByUs = !qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
    if (chosenByUs) qputenv("QT_QPA_PLATFORM", "wayland;xcb;offscreen");
    // Platforms that are tried in vain complain; without a screen one sentence says it all.
    if (chosenByUs) qInstallMessageHandler(quiet);
    const QApplication application(argc, argv);
    qInstallMessageHandler(nullptr);
    if (chosenByUs && QGuiApplication::platformName() == QStringLiteral("offscreen")) {
        std::cerr << "display: found none; allowed is a screen, or one of the verbs " << commands::verbNames()
                  << ", which need none.\n";
        return 2;
    }
    try {
        const commands::Places where = commands::places();
        const Speech speech(commands::resourceFolders(where));
        const std::vector<std::string> demos = commands::demoDesigns(where);
        const auto shop = std::make_shared<const catalog::Catalog>(commands::shopCatalog(where));
        // A file that cannot be opened leaves a demo on the screen and its sentence in the message line.
        const std::string start = !demos.empty()      ? demos.front()
                                  : arguments.empty() ? std::string()
                                                      : arguments.front();
        bench::BenchWindow window(shop, commands::readDesign(start, *shop), demos, commands::resourceFolders(where));
        window.guardWork();
        if (!speech.why.isEmpty()) window.say(speech.why);
        if (!arguments.empty()) window.openFile(QString::fromStdString(arguments.front()));
        if (arguments.empty() && !QFileInfo::exists(bench::memoryPath())) window.showStart();
        window.show();
        return QApplication::exec();
    } catch (const std::exception& failure) {
        std::cerr << failure.what() << '\n';
        return 2;
    }
}

}  // namespace

int main(int argc, char** argv) {
    QHashSeed::setDeterministicGlobalSeed();  // the same input gives the same bytes on paper
    QCoreApplication::setApplicationName(QStringLiteral("coilwright"));
    QCoreApplication::setApplicationVersion(QStringLiteral(COILWRIGHT_VERSION));
    const std::vector<std::string> arguments(argv + 1, argv + argc);
    return commands::isCommand(arguments) ? runCommand(argc, argv, arguments) : showWindow(argc, argv, arguments);
}
