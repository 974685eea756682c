// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright handbook --to F.pdf [--paper a4|letter]
#include "handbook/book.h"

#include "commands/arguments.h"
#include "commands/shop_papers.h"
#include "commands/verb.h"
#include "exchange/write_file.h"
#include "handbook/pages.h"
#include "papers/datasheet.h"
#include "units/fault.h"

namespace commands {

std::string handbookBook(const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{}, {}, {"--to", "--paper"}});
    const std::string to = arguments.option("--to");
    if (to.empty()) refuse("--to", "no file", "the PDF file to write");
    const papers::Format format = formatOf(arguments.option("--paper"));
    const Places where = places();
    const QString folder = handbook::folderIn({where.resources});
    if (folder.isEmpty()) units::refuse(where.resources + "/handbook", "no index.md", "the handbook's folder");
    const QByteArray bytes = handbook::paintedBook(folder, format, papers::paperDate());
    exchange::writeFile(to, std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
    return to + '\n';
}

}  // namespace commands
