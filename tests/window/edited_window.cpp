// SPDX-License-Identifier: GPL-3.0-or-later
// A window whose edits never end, for a test that kills it: edited_window DESIGN SEED. Standard output: "ready", then a
// line for each committed design: milliseconds since the epoch, and the digest of its text.
#include <QApplication>
#include <QDateTime>
#include <QTimer>
#include <iostream>

#include "commands/places.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "random_edits.h"

int main(int argc, char** argv) {
    const QApplication application(argc, argv);
    const std::string path = argv[1];
    const auto shop = std::make_shared<const catalog::Catalog>(commands::shopCatalog(commands::places()));
    bench::BenchWindow window(shop, exchange::readDesign(exchange::readFile(path), path, *shop).design, {});
    window.guardWork();
    window.openFile(QString::fromStdString(path));
    window.show();
    QObject::connect(&window.document(), &document::Document::changed, &window, [&] {
        std::cout << QDateTime::currentMSecsSinceEpoch() << ' '
                  << exchange::digestOf(*window.document().design(), *shop) << std::endl;
    });
    window_test::RandomHand hand(window, static_cast<unsigned>(std::stoul(argv[2])));
    QTimer next;
    QObject::connect(&next, &QTimer::timeout, &window, [&hand] { hand.act(); });
    next.start(5);
    std::cout << "ready" << std::endl;
    return QApplication::exec();
}
