// SPDX-License-Identifier: GPL-3.0-or-later
//
// Rayleigh's method of multipoles (Lord Rayleigh, Philosophical Magazine 34 (1892) 481-502, from memory) for one row.
// Wires at z = i l p in the complex plane z = x + i y, the facing plane at x = s + t. In the filler
//
//     phi = A + c x + b_0 ln|2 sinh(pi z/p)| + sum_m b_m Re sum_l (z - i l p)^-m + sum_n rho_n g_n e^{k(x - 2 s)} cos k
//     y
//
// with k = 2 pi n/p. c = b_0 pi/p keeps the field off the far side. g_n is the amplitude of e^{-kx} cos ky that the
// multipoles send towards the plane, rho_n what the sheet in front of the plane reflects. About a wire the parts that
// are regular there have coefficients d_q; enamel and conductor answer d_q r^q with b_q r^-q, which closes the
// equations. Unknowns are beta_m = b_m / b^m (b: overall radius) and A. Derived here; compared with finite elements in
// the tests.
#include "field/cell_multipole.h"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace field {

namespace {

using std::numbers::pi;
using Complex = std::complex<double>;
using Matrix = Eigen::MatrixXcd;

constexpr int greatestOrder = 24;

/// Riemann's zeta at n >= 2 by Euler and Maclaurin.
double zeta(int n) {
    constexpr int terms = 16;
    double sum = 0;
    for (int k = 1; k < terms; ++k) sum += std::pow(k, -n);
    return sum + std::pow(terms, 1 - n) / (n - 1) + 0.5 * std::pow(terms, -n) + n * std::pow(terms, -n - 1) / 12;
}

/// Field of all other wires about one wire, without the powers of b/p: coefficient of r^q cos(q theta) from multipole
/// m.
struct Lattice {
    using Table = std::array<std::array<double, greatestOrder + 1>, greatestOrder + 1>;
    Table equal{}, alternating{};

    Lattice() {
        for (int m = 0; m <= greatestOrder; ++m)
            for (int q = 0; q <= greatestOrder; ++q) {
                const int n = m + q;
                if (n == 0 || n % 2 != 0) continue;
                const double sum = 2 * zeta(n) * (n / 2 % 2 == 0 ? 1 : -1);
                const double weight = m == 0 ? -1.0 / q : (m % 2 == 0 ? 1 : -1) * binomial(n - 1, q);
                const auto i = static_cast<std::size_t>(q), j = static_cast<std::size_t>(m);
                equal[i][j] = weight * sum;
                alternating[i][j] = -weight * sum * (1 - std::pow(2.0, 1 - n));
            }
    }
    static double binomial(int n, int k) {
        double value = 1;
        for (int i = 1; i <= k; ++i) value *= static_cast<double>(n - k + i) / i;
        return value;
    }
};

const Lattice& lattice() {
    static const Lattice made;
    return made;
}

/// Regular coefficients d_q b^q as a matrix on beta, of the row's other wires.
Matrix neighbours(const Lattice::Table& table, double radiusOverPitch, int order) {
    Matrix regular(order + 1, order + 1);
    for (int q = 0; q <= order; ++q)
        for (int m = 0; m <= order; ++m)
            regular(q, m) =
                table[static_cast<std::size_t>(q)][static_cast<std::size_t>(m)] * std::pow(radiusOverPitch, q + m);
    return regular;
}

/// What the sheet in front of the plane sends back of a mode: admittances eps k coth(k t), or tanh where the plane is
/// even.
Complex reflection(const FacingPlane& plane, Complex filler, double k, bool even) {
    if (plane.sheet <= 0) return even ? 1 : -1;
    const double t = std::tanh(k * plane.sheet);
    const Complex sheet = plane.permittivity * (even ? t : 1 / t);
    return (filler - sheet) / (filler + sheet);
}

void addReflections(Matrix& regular, const WireRow& row, const FacingPlane& plane, int order) {
    const double b = row.overall / 2;
    const double spread = row.pitch / (2 * pi * plane.toSheet);
    const int modes = std::clamp(static_cast<int>(std::ceil((2 * order + 15) * spread)), 1, 20000);
    Eigen::VectorXd sent(order + 1), received(order + 1);
    for (int n = 1; n <= modes; ++n) {
        const double k = 2 * pi * n / row.pitch;
        double term = std::exp(-k * plane.toSheet);  // (kb)^m/m! e^{-ks}
        for (int m = 0; m <= order; ++m) {
            received(m) = term;
            sent(m) = m == 0 ? -term : term * m;
            term *= k * b / (m + 1);
        }
        const Complex back = reflection(plane, row.filler, k, plane.staggered && n % 2 == 1) / static_cast<double>(n);
        regular.topLeftCorner(order + 1, order + 1) += back * (received * sent.transpose());
    }
}

/// b_q b^-q in answer to d_q b^q: a conductor under enamel.
Complex answer(const WireRow& row, int q) {
    const double inner = std::pow(row.bare / row.overall, 2 * q);
    if (inner > 1 - 1e-12) return -1;
    const Complex stiffness = row.enamel / row.filler * (1 + inner) / (1 - inner);
    return (1.0 - stiffness) / (1.0 + stiffness);
}

/// The rows of the system that say how a wire answers; row 0 sets its conductor's potential.
void closeOnWire(Matrix& system, const Matrix& regular, const WireRow& row, int order) {
    system.block(0, 0, 1, order + 1) = regular.row(0);
    system(0, 0) -= row.filler / row.enamel * std::log(row.overall / row.bare);
    for (int q = 1; q <= order; ++q) {
        system.block(q, 0, 1, order + 1) = -answer(row, q) * regular.row(q);
        system(q, q) += 1;
    }
}

/// Solves in real numbers where nothing is lossy: four times as quick.
Complex firstUnknown(const Matrix& system, double drive) {
    const auto n = system.rows();
    if (system.imag().isZero(0)) {
        Eigen::VectorXd right = Eigen::VectorXd::Zero(n);
        right(0) = drive;
        return Eigen::MatrixXd(system.real()).partialPivLu().solve(right)(0);
    }
    Eigen::VectorXcd right = Eigen::VectorXcd::Zero(n);
    right(0) = drive;
    return system.partialPivLu().solve(right)(0);
}

}  // namespace

Complex rowToPlane(const WireRow& row, const FacingPlane& plane, int order) {
    order = std::clamp(order, 1, greatestOrder);
    const double b = row.overall / 2, p = row.pitch;
    Matrix regular = neighbours(lattice().equal, b / p, order);
    regular(0, 0) += std::log(2 * pi * b / p);
    regular(1, 0) += pi * b / p;
    addReflections(regular, row, plane, order);

    Matrix system = Matrix::Zero(order + 2, order + 2);
    closeOnWire(system, regular, row, order);
    system(0, order + 1) = 1;
    // The mean potential falls to zero at the plane.
    system(order + 1, order + 1) = 1;
    system(order + 1, 0) = 2 * pi / p * (plane.toSheet + plane.sheet * row.filler / plane.permittivity);
    system(order + 1, 1) = pi * b / p;
    return -2 * pi * vacuumPermittivity * row.filler * firstUnknown(system, 1);
}

Complex alternatingRow(const WireRow& row, int order) {
    order = std::clamp(order, 1, greatestOrder);
    const double b = row.overall / 2, p = row.pitch;
    Matrix regular = neighbours(lattice().alternating, b / p, order);
    regular(0, 0) += std::log(pi * b / (2 * p));
    Matrix system = Matrix::Zero(order + 1, order + 1);
    closeOnWire(system, regular, row, order);
    return -pi * vacuumPermittivity * row.filler * firstUnknown(system, 0.5);
}

}  // namespace field
