// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/shop_file.h"

namespace papers {

namespace {

/// The part (or name) and revision in plain letters, ".coilwright".
QString attachmentName(const shop::PaperHead& head) {
    QString name;
    const std::string part = (head.partNumber.empty() ? head.title : head.partNumber) + "-" + head.revision;
    for (const char one : part) {
        const bool plain = (one >= '0' && one <= '9') || (one >= 'a' && one <= 'z') || (one >= 'A' && one <= 'Z');
        if (plain)
            name += QLatin1Char(one);
        else if (!name.isEmpty() && !name.endsWith(QLatin1Char('-')))
            name += QLatin1Char('-');
    }
    return (name.isEmpty() ? QStringLiteral("design") : name) + QStringLiteral(".coilwright");
}

}  // namespace

PdfFile shopFile(const shop::PaperHead& head, const std::string& title, Format format, const std::string& design) {
    return {title, head.date, format, Attachment{attachmentName(head), QByteArray::fromStdString(design)}};
}

PdfFile shopFile(const shop::PaperHead& head, Format format, const std::string& design) {
    return shopFile(head, head.paper + ", " + head.title, format, design);
}

PdfFile customerFile(const shop::PaperHead& head, Format format) {
    return {head.paper + ", " + head.title, head.date, format, {}};
}

}  // namespace papers
