// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/datasheet.h"

#include <QDateTime>

#include "exchange/design_json.h"
#include "exchange/write_file.h"
#include "papers/datasheet_pages.h"
#include "papers/pdf.h"

namespace papers {

std::string paperDate() {
    bool set = false;
    const qlonglong seconds = qEnvironmentVariable("SOURCE_DATE_EPOCH").toLongLong(&set);
    const QDateTime moment = set ? QDateTime::fromSecsSinceEpoch(seconds, Qt::UTC) : QDateTime::currentDateTimeUtc();
    return moment.date().toString(Qt::ISODate).toStdString();
}

Printed printed(const shop::Datasheet& sheet, Format format) {
    return {{sheet.title, sheet.date, format, {}},
            [sheet](Paper& paper, int pages) { return paintDatasheetPages(paper, sheet, pages); },
            2};
}

void writeDatasheet(const design::Design& design, const analysis::Answer& answer, const catalog::Catalog& shop,
                    const std::string& path, Format format) {
    const shop::Datasheet sheet =
        shop::datasheet(design, answer, shop, {paperDate(), exchange::digestOf(design, shop)});
    const QByteArray bytes = paintedPdf(printed(sheet, format));
    exchange::writeFile(path, std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
}

}  // namespace papers
