// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/square_code.h"

#include <qrencode.h>

#include <memory>

namespace papers {

void paintSquareCode(Paper& paper, const QRectF& rect, const std::string& words) {
    constexpr int quiet = 4;
    const auto drop = [](QRcode* code) { QRcode_free(code); };
    const std::unique_ptr<QRcode, decltype(drop)> code(
        QRcode_encodeString(words.c_str(), 0, QR_ECLEVEL_M, QR_MODE_8, 1), drop);
    if (!code) return;
    const int wide = code->width;
    const double module = std::min(rect.width(), rect.height()) / (wide + 2 * quiet);
    const QPointF corner = rect.center() - QPointF(wide, wide) * module / 2;
    // Modules side by side are one rectangle, so that no hairline of paper shows between them.
    std::vector<QRectF> runs;
    for (int y = 0; y < wide; ++y)
        for (int x = 0; x < wide;) {
            const auto dark = [&](int at) { return at < wide && (code->data[y * wide + at] & 1) != 0; };
            int end = x;
            while (dark(end)) ++end;
            if (end > x)
                runs.emplace_back(corner.x() + x * module, corner.y() + y * module, (end - x) * module, module * 1.01);
            x = std::max(end, x) + 1;
        }
    paper.fill(runs);
}

}  // namespace papers
