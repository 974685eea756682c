// SPDX-License-Identifier: GPL-3.0-or-later
// The main function of tests that need an application: no display, no theme, nothing of the user's own.
#include <gtest/gtest.h>

#include <QApplication>
#include <QTemporaryDir>

#include "bench/theme.h"

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QTemporaryDir home;
    for (const char* folder : {"XDG_STATE_HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_RUNTIME_DIR"})
        qputenv(folder, home.path().toUtf8());
    qputenv("COILWRIGHT_RESOURCES", COILWRIGHT_SOURCE_DIR "/resources");
    testing::InitGoogleTest(&argc, argv);
    QApplication application(argc, argv);
    bench::applyLook(bench::Look::Light);
    return RUN_ALL_TESTS();
}
