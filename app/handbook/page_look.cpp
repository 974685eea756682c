// SPDX-License-Identifier: GPL-3.0-or-later
#include "handbook/page_look.h"

#include <QTextBlock>
#include <QTextCursor>
#include <QTextTable>
#include <vector>

namespace handbook {

namespace {

bool isFenced(const QTextBlock& block) {
    return block.isValid() && block.blockFormat().hasProperty(QTextFormat::BlockCodeFence);
}

bool isFormula(const QTextBlock& block) {
    return block.blockFormat().stringProperty(QTextFormat::BlockCodeLanguage) == QStringLiteral("formula");
}

void rule(QTextTable& table, const PageLook& look) {
    QTextTableFormat format = table.format();
    format.setBorderCollapse(true);
    format.setBorder(0.5);
    format.setBorderBrush(look.line);
    format.setBorderStyle(QTextFrameFormat::BorderStyle_Solid);
    format.setCellPadding(3);
    format.setCellSpacing(0);
    format.setTopMargin(4);
    format.setBottomMargin(8);
    format.setWidth(QTextLength(QTextLength::PercentageLength, 100));
    table.setFormat(format);
}

void ruleTables(const QTextFrame& frame, const PageLook& look) {
    for (QTextFrame* child : frame.childFrames()) {
        if (auto* table = qobject_cast<QTextTable*>(child)) rule(*table, look);
        ruleTables(*child, look);
    }
}

/// A formula's or file's line: no room between the lines, some around them.
void ground(const QTextBlock& block, const PageLook& look) {
    QTextBlockFormat format = block.blockFormat();
    format.setBackground(look.ground);
    format.setTopMargin(isFenced(block.previous()) ? 0 : 8);
    format.setBottomMargin(isFenced(block.next()) ? 0 : 8);
    format.setLeftMargin(12);
    QTextCursor(block).setBlockFormat(format);
}

struct Stretch {
    int from, to;
    QTextCharFormat format;
};

/// One type for all that is set in one width; pictures that are too wide are narrowed.
void dressFragments(const QTextBlock& block, QTextDocument& page, const PageLook& look, std::vector<Stretch>& changed) {
    for (auto it = block.begin(); !it.atEnd(); ++it) {
        QTextCharFormat format = it.fragment().charFormat();
        if (format.isImageFormat()) {
            QTextImageFormat picture = format.toImageFormat();
            const auto image = page.resource(QTextDocument::ImageResource, QUrl(picture.name())).value<QImage>();
            picture.setWidth(image.isNull() ? look.pictureWidth : std::min<double>(image.width(), look.pictureWidth));
            if (!image.isNull()) picture.setHeight(picture.width() * image.height() / image.width());
            format = picture;
        } else if (format.fontFixedPitch() || isFenced(block)) {
            format.setFontFamilies({QStringLiteral("DejaVu Sans Mono")});
            format.setFontPointSize(page.defaultFont().pointSizeF() * (isFormula(block) ? 1 : 0.87));
        } else {
            continue;
        }
        changed.push_back({it.fragment().position(), it.fragment().position() + it.fragment().length(), format});
    }
}

}  // namespace

void dress(QTextDocument& page, const PageLook& look) {
    ruleTables(*page.rootFrame(), look);
    std::vector<Stretch> changed;
    for (QTextBlock block = page.begin(); block.isValid(); block = block.next()) {
        if (isFenced(block)) ground(block, look);
        dressFragments(block, page, look, changed);
    }
    QTextCursor cursor(&page);
    for (const Stretch& one : changed) {
        cursor.setPosition(one.from);
        cursor.setPosition(one.to, QTextCursor::KeepAnchor);
        cursor.setCharFormat(one.format);
    }
}

}  // namespace handbook
