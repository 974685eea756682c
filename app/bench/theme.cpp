// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/theme.h"

#include <QApplication>
#include <QPalette>
#include <QStyleFactory>
#include <array>

namespace bench {

namespace {

Look chosen = Look::Light;
bool darkNow = false;

struct Pair {
    QRgb light;
    QRgb dark;
};

constexpr std::array<Pair, 14> tokens{{
    {0xF3F1EC, 0x1E2124},  // Window
    {0xFFFFFF, 0x16181B},  // Base
    {0x1F2328, 0xE6E3DD},  // Text
    {0x585E66, 0xA9AFB6},  // Muted
    {0x8B877E, 0x6B727A},  // Line
    {0x0B5C8A, 0x6BB8E6},  // Accent
    {0x22683A, 0x7CC792},  // Kept
    {0x7A4F00, 0xE0B054},  // Thin
    {0xA3211A, 0xFF8A80},  // Broken
    {0xD5D7DA, 0x33383D},  // Iron
    {0xDDD6C6, 0x3A362D},  // Bobbin
    {0xEFE6CF, 0x4A4436},  // Paper
    {0xB26A2E, 0xD08A4C},  // Foil
    {0xF6E3E1, 0x3A2422},  // MaskArea
}};

// After Okabe and Ito, darkened on light ground until a line stands out 3:1.
constexpr std::array<QRgb, 4> lightHues{0x0072B2, 0xC24F00, 0x00805C, 0xB0578A};
constexpr std::array<QRgb, 6> darkHues{0x56B4E9, 0xE69F00, 0x2FBF93, 0xDE9CC2, 0xF07A2B, 0xF0E442};

constexpr std::array<Qt::BrushStyle, 7> hatches{Qt::BDiagPattern, Qt::FDiagPattern, Qt::CrossPattern,
                                                Qt::HorPattern,   Qt::VerPattern,   Qt::DiagCrossPattern,
                                                Qt::Dense5Pattern};

template <std::size_t n>
QRgb cycled(const std::array<QRgb, n>& hues, int index) {
    return hues[static_cast<std::size_t>(index < 0 ? 0 : index) % n];
}

QPalette palette(bool dark) {
    const auto of = [dark](Token token) { return colour(token, dark); };
    QPalette p;
    p.setColor(QPalette::Window, of(Token::Window));
    p.setColor(QPalette::WindowText, of(Token::Text));
    p.setColor(QPalette::Base, of(Token::Base));
    p.setColor(QPalette::AlternateBase, mixed(of(Token::Base), of(Token::Window), 0.5));
    p.setColor(QPalette::Text, of(Token::Text));
    p.setColor(QPalette::PlaceholderText, of(Token::Muted));
    p.setColor(QPalette::Button, of(Token::Window));
    p.setColor(QPalette::ButtonText, of(Token::Text));
    p.setColor(QPalette::BrightText, of(Token::Broken));
    p.setColor(QPalette::ToolTipBase, of(Token::Base));
    p.setColor(QPalette::ToolTipText, of(Token::Text));
    p.setColor(QPalette::Highlight, of(Token::Accent));
    p.setColor(QPalette::HighlightedText, of(Token::Base));
    p.setColor(QPalette::Link, of(Token::Accent));
    p.setColor(QPalette::LinkVisited, of(Token::Accent));
    p.setColor(QPalette::Light, mixed(of(Token::Window), QColor(Qt::white), dark ? 0.12 : 0.6));
    p.setColor(QPalette::Midlight, mixed(of(Token::Window), QColor(Qt::white), dark ? 0.06 : 0.3));
    p.setColor(QPalette::Mid, mixed(of(Token::Window), of(Token::Line), 0.5));
    p.setColor(QPalette::Dark, of(Token::Line));
    p.setColor(QPalette::Shadow, mixed(of(Token::Line), QColor(Qt::black), 0.5));
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        p.setColor(QPalette::Disabled, role, of(Token::Line));
    p.setColor(QPalette::Disabled, QPalette::Base, of(Token::Window));
    p.setColor(QPalette::Disabled, QPalette::Highlight, of(Token::Line));
    return p;
}

bool desktopIsDark() {
    QApplication::setPalette(QPalette());  // back to what the desktop says
    const QPalette desktop = QApplication::palette();
    return desktop.color(QPalette::WindowText).lightness() > desktop.color(QPalette::Window).lightness();
}

}  // namespace

void applyLook(Look look) {
    chosen = look;
    if (!QApplication::style() || QApplication::style()->name() != QStringLiteral("fusion"))
        QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    darkNow = look == Look::Dark || (look == Look::Desktop && desktopIsDark());
    QApplication::setPalette(palette(darkNow));
}

Look look() noexcept {
    return chosen;
}

bool isDark() noexcept {
    return darkNow;
}

QColor colour(Token token) {
    return colour(token, darkNow);
}

QColor colour(Token token, bool dark) {
    const Pair& pair = tokens[static_cast<std::size_t>(token)];
    return QColor(dark ? pair.dark : pair.light);
}

QColor windingColour(int index) {
    return windingColour(index, darkNow);
}

QColor windingColour(int index, bool dark) {
    return QColor(dark ? cycled(darkHues, index) : cycled(lightHues, index));
}

Qt::BrushStyle windingBrushStyle(int index) {
    return hatches[static_cast<std::size_t>(index < 0 ? 0 : index) % hatches.size()];
}

QColor mixed(const QColor& a, const QColor& b, double share) {
    const auto between = [share](double from, double to) { return static_cast<float>(from + (to - from) * share); };
    return QColor::fromRgbF(between(a.redF(), b.redF()), between(a.greenF(), b.greenF()),
                            between(a.blueF(), b.blueF()));
}

}  // namespace bench
