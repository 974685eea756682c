// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/missing_characters.h"

namespace papers {

QString missingCharacters(const Paper& paper, const shop::Words& say) {
    QString list;
    for (const char32_t one : paper.missing())
        list += (list.isEmpty() ? QString() : QStringLiteral(", ")) + QStringLiteral("U+") +
                QStringLiteral("%1").arg(static_cast<uint>(one), 4, 16, QLatin1Char('0')).toUpper();
    if (list.isEmpty()) return {};
    return QString::fromStdString(
        say("□ stands for a character that this paper's type does not have: %1.", {list.toStdString()}));
}

}  // namespace papers
