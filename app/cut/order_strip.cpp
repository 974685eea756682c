// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/order_strip.h"

#include <QMenu>
#include <QPainter>
#include <algorithm>
#include <limits>

#include "bench/theme.h"
#include "cut/item_words.h"

namespace cut {

using design::ItemIndex;
using document::WholePart;

namespace {

constexpr int margin = 4;
constexpr int arrowRoom = 16;

int windingIndex(const design::Design& design, const std::string& name) {
    for (std::size_t i = 0; i < design.windings.size(); ++i)
        if (design.windings[i].name == name) return static_cast<int>(i);
    return 0;
}

}  // namespace

OrderStrip::OrderStrip(document::Document& document, document::Selection& selection, QWidget* parent)
    : QWidget(parent), document_(document), selection_(selection), edits_(new CoilEdits(document, selection, this)) {
    setAccessibleName(tr("Winding order"));
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(edits_, &CoilEdits::message, this, &OrderStrip::message);
    connect(&document_, &document::Document::shownChanged, this, &OrderStrip::rebuild);
    connect(&selection_, &document::Selection::changed, this, &OrderStrip::showSelection);
    rebuild();
}

Chip* OrderStrip::addChip(document::Selected part, const QString& text, ChipSign sign, int winding,
                          const QString& sentence) {
    auto* chip = new Chip(std::move(part), text, sign, winding, this);
    chip->setAccessibleName(text);
    chip->setAccessibleDescription(sentence);
    chip->setToolTip(sentence);
    connect(chip, &QAbstractButton::clicked, this, [this, chip] { selection_.select(chip->part()); });
    connect(chip, &Chip::walked, this, [this, chip](int key, bool move) { walk(*chip, key, move); });
    connect(chip, &Chip::formRequested, this, [this, chip] {
        selection_.select(chip->part());
        emit formRequested();
    });
    if (const auto* item = chip->item()) {
        const ItemIndex index = *item;
        connect(chip, &Chip::removed, this, [this, index] { edits_->remove(index); });
        connect(chip, &Chip::dragged, this, [this, chip](QPoint at) { dragTo(*chip, mapFromGlobal(at)); });
        connect(chip, &Chip::dropped, this, [this] { endDrag(true); });
        connect(chip, &Chip::dragCancelled, this, [this] { endDrag(false); });
        connect(chip, &Chip::menuRequested, this, [this, index](QPoint at) {
            auto* menu = new QMenu(this);
            menu->setAttribute(Qt::WA_DeleteOnClose);
            edits_->fill(*menu, index, index);
            menu->popup(at);
        });
    }
    return chip;
}

void OrderStrip::addRow(int index) {
    const auto& design = *document_.shown();
    const auto& place = design.coil[static_cast<std::size_t>(index)];
    Row row{index, {}, {}};
    if (design.coil.size() > 1) {
        const bool legs = std::any_of(design.coil.begin(), design.coil.end(), [](const auto& p) { return p.leg != 1; });
        row.heading =
            legs ? tr("leg %1, chamber %2").arg(place.leg).arg(place.chamber) : tr("chamber %1").arg(place.chamber);
    }
    row.chips.push_back(addChip(WholePart{WholePart::Which::Core}, tr("core"), ChipSign::None, 0,
                                tr("The core: everything is wound outward from it")));
    for (int i = 0; i < static_cast<int>(place.order.size()); ++i) {
        const auto& item = place.order[static_cast<std::size_t>(i)];
        const auto* section = item.section();
        const auto sign = section != nullptr         ? ChipSign::Winding
                          : item.shield() != nullptr ? ChipSign::Earth
                                                     : ChipSign::Paper;
        row.chips.push_back(addChip(ItemIndex{index, i}, itemLabel(item), sign,
                                    section != nullptr ? windingIndex(design, section->winding) : 0,
                                    itemSentence(design, {index, i})));
    }
    rows_.push_back(std::move(row));
}

void OrderStrip::rebuild() {
    if (drag_) {
        stale_ = true;
        return;
    }
    bool focused = false;
    for (auto& row : rows_)
        for (auto* chip : row.chips) {
            focused = focused || chip->hasFocus();
            chip->disconnect(this);
            chip->hide();
            chip->deleteLater();
        }
    rows_.clear();
    for (int p = 0; p < static_cast<int>(document_.shown()->coil.size()); ++p) addRow(p);
    setAccessibleDescription(coilSentence(*document_.shown()));
    std::vector<Spot> spots;
    arrange(width(), &spots, nullptr);
    for (const auto& spot : spots) {
        spot.chip->setGeometry(QRect(spot.at, spot.chip->sizeHint()));
        spot.chip->show();
    }
    showSelection();
    if (focused) {
        const auto* item = selection_.item();
        if (auto* now = item != nullptr ? chip(*item) : nullptr)
            now->setFocus(Qt::OtherFocusReason);
        else if (!rows_.empty())
            rows_.front().chips.front()->setFocus(Qt::OtherFocusReason);
    }
    updateGeometry();
    update();
}

int OrderStrip::arrange(int width, std::vector<Spot>* spots, std::vector<std::pair<QPoint, QString>>* headings) const {
    int y = margin;
    const int line = fontMetrics().height() + 8;
    for (const auto& row : rows_) {
        int x = margin;
        if (!row.heading.isEmpty()) {
            if (headings != nullptr) headings->push_back({QPoint(x, y), row.heading});
            x += fontMetrics().horizontalAdvance(row.heading) + 12;
        }
        const int indent = x;
        for (auto* chip : row.chips) {
            const int wide = chip->sizeHint().width();
            const bool first = chip == row.chips.front();
            if (!first) x += arrowRoom;
            if (x > indent && x + wide > width - margin) {
                x = indent + arrowRoom;
                y += line + margin;
            }
            if (spots != nullptr) spots->push_back({chip, QPoint(x, y)});
            x += wide;
        }
        y += line + margin;
    }
    return y;
}

int OrderStrip::heightForWidth(int width) const {
    return arrange(width, nullptr, nullptr);
}

QSize OrderStrip::sizeHint() const {
    return {420, heightForWidth(420)};
}

void OrderStrip::resizeEvent(QResizeEvent* event) {
    std::vector<Spot> spots;
    arrange(width(), &spots, nullptr);
    for (const auto& spot : spots) spot.chip->setGeometry(QRect(spot.at, spot.chip->sizeHint()));
    QWidget::resizeEvent(event);
}

Chip* OrderStrip::chip(ItemIndex item) const {
    for (const auto& row : rows_)
        for (auto* chip : row.chips)
            if (chip->item() != nullptr && *chip->item() == item) return chip;
    return nullptr;
}

void OrderStrip::showSelection() {
    Chip* stop = nullptr;
    bool focused = false;
    for (const auto& row : rows_)
        for (auto* chip : row.chips) {
            const bool winding = chip->item() != nullptr && [&] {
                const auto* part = std::get_if<document::WindingPart>(&selection_.selected());
                const auto* item = itemAt(*document_.shown(), *chip->item());
                return part != nullptr && item != nullptr && item->section() != nullptr &&
                       item->section()->winding == part->name;
            }();
            chip->setSelected(winding || chip->part() == selection_.selected());
            focused = focused || chip->hasFocus();
            if (chip->isSelected() && stop == nullptr) stop = chip;
            chip->setFocusPolicy(Qt::ClickFocus);
        }
    // One stop for Tab; the arrows do the rest.
    if (stop == nullptr && !rows_.empty()) stop = rows_.front().chips.front();
    if (stop == nullptr) return;
    stop->setFocusPolicy(Qt::StrongFocus);
    if (focused && !stop->hasFocus()) stop->setFocus(Qt::OtherFocusReason);
}

void OrderStrip::walk(const Chip& from, int key, bool move) {
    const int direction = key == Qt::Key_Right ? 1 : -1;
    if (move && from.item() != nullptr && (key == Qt::Key_Left || key == Qt::Key_Right)) {
        edits_->step(*from.item(), direction);
        return;
    }
    std::vector<Chip*> line;
    for (const auto& row : rows_) line.insert(line.end(), row.chips.begin(), row.chips.end());
    const auto at = std::find(line.begin(), line.end(), &from);
    if (at == line.end()) return;
    auto* next = *at;
    if (key == Qt::Key_Home)
        next = line.front();
    else if (key == Qt::Key_End)
        next = line.back();
    else if (direction > 0 && at + 1 != line.end())
        next = *(at + 1);
    else if (direction < 0 && at != line.begin())
        next = *(at - 1);
    selection_.select(next->part());
    next->setFocus(Qt::OtherFocusReason);
}

std::optional<ItemIndex> OrderStrip::landingAt(const QPoint& at) const {
    const Chip* nearest = nullptr;
    const Row* home = nullptr;
    int least = std::numeric_limits<int>::max();
    for (const auto& row : rows_)
        for (const auto* chip : row.chips) {
            const QRect r = chip->geometry();
            const int dy = std::max({r.top() - at.y(), 0, at.y() - r.bottom()}),
                      dx = std::max({r.left() - at.x(), 0, at.x() - r.right()});
            if (const int far = 8 * dy + dx; far < least) {
                least = far;
                nearest = chip;
                home = &row;
            }
        }
    if (nearest == nullptr) return std::nullopt;
    if (nearest->item() == nullptr) return ItemIndex{home->place, 0};
    const bool after = at.x() > nearest->geometry().center().x();
    return ItemIndex{home->place, nearest->item()->item + (after ? 1 : 0)};
}

void OrderStrip::dragTo(const Chip& chip, const QPoint& at) {
    if (!drag_) drag_ = Drag{*chip.item(), std::nullopt};
    const auto before = landingAt(at);
    if (before && before != drag_->before) edits_->tryMove(drag_->item, *before);
    drag_->before = before;
    update();
}

void OrderStrip::endDrag(bool keep) {
    if (!drag_) return;
    const Drag done = *drag_;
    drag_.reset();
    const auto design = document_.design();
    if (keep && done.before)
        edits_->move(done.item, *done.before);
    else
        edits_->cancel();
    if (std::exchange(stale_, false) && document_.design() == design) rebuild();
    update();
}

void OrderStrip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    std::vector<Spot> spots;
    std::vector<std::pair<QPoint, QString>> headings;
    arrange(width(), &spots, &headings);
    const int line = fontMetrics().height() + 8;
    painter.setPen(bench::colour(bench::Token::Muted));
    for (const auto& [at, words] : headings)
        painter.drawText(QRect(at, QSize(width(), line)), Qt::AlignVCenter | Qt::AlignLeft, words);
    for (const auto& spot : spots) {
        if (spot.chip->item() == nullptr) continue;
        const QPointF tip(spot.at.x() - 5, spot.at.y() + line / 2.0);
        painter.setRenderHint(QPainter::Antialiasing, true);
        painter.setPen(Qt::NoPen);
        painter.setBrush(bench::colour(bench::Token::Line));
        painter.drawPolygon(QPolygonF{tip, tip + QPointF(-5, -4), tip + QPointF(-5, 4)});
    }
    if (!drag_ || !drag_->before) return;
    const auto* next = chip(*drag_->before);
    const auto* last = drag_->before->item > 0 ? chip({drag_->before->place, drag_->before->item - 1}) : nullptr;
    int x = 0, y = 0;
    if (next != nullptr) {
        x = next->x() - arrowRoom / 2;
        y = next->y();
    } else if (last != nullptr) {
        x = last->geometry().right() + arrowRoom / 2;
        y = last->y();
    } else {
        const auto* core = rows_[static_cast<std::size_t>(drag_->before->place)].chips.front();
        x = core->geometry().right() + arrowRoom / 2;
        y = core->y();
    }
    painter.setPen(QPen(bench::colour(bench::Token::Accent), 3));
    painter.drawLine(x, y - 2, x, y + line + 2);
}

}  // namespace cut
