// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/symmetric.h"

#include <utility>

#include "network/dense.h"

namespace network {

ComplexMatrix product(const Matrix& real, const Matrix& imaginary, const ComplexMatrix& x) {
    ComplexMatrix result(real.rows(), x.cols());
    Vector re(real.rows()), im(real.rows());
    for (Eigen::Index c = 0; c < x.cols(); ++c) {
        const Vector a = x.col(c).real(), b = x.col(c).imag();
        re.noalias() = real * a;
        re.noalias() -= imaginary * b;
        im.noalias() = real * b;
        im.noalias() += imaginary * a;
        result.col(c).real() = re;
        result.col(c).imag() = im;
    }
    return result;
}

SymmetricFactors::SymmetricFactors(Matrix real, Matrix imaginary)
    : systemReal_(std::move(real)),
      systemImaginary_(std::move(imaginary)),
      real_(systemReal_),
      imaginary_(systemImaginary_) {
    factor();
}

namespace {

using Column = Eigen::Map<const Vector>;
using WritableColumn = Eigen::Map<Vector>;

/// The part of a column from a row on.
Column from(const Matrix& m, Eigen::Index row, Eigen::Index column) {
    return {m.data() + column * m.rows() + row, m.rows() - row};
}
WritableColumn from(Matrix& m, Eigen::Index row, Eigen::Index column) {
    return {m.data() + column * m.rows() + row, m.rows() - row};
}

}  // namespace

/// Takes what the columns before add to this one away from it, four at a time: fewer passes over memory.
void SymmetricFactors::eliminate(Eigen::Index column, const Vector& a, const Vector& b) {
    WritableColumn real = from(real_, column, column), imaginary = from(imaginary_, column, column);
    const Matrix &allReal = real_, &allImaginary = imaginary_;
    Eigen::Index k = 0;
    for (; k + 4 <= column; k += 4) {
        const Column re0 = from(allReal, column, k), im0 = from(allImaginary, column, k);
        const Column re1 = from(allReal, column, k + 1), im1 = from(allImaginary, column, k + 1);
        const Column re2 = from(allReal, column, k + 2), im2 = from(allImaginary, column, k + 2);
        const Column re3 = from(allReal, column, k + 3), im3 = from(allImaginary, column, k + 3);
        real -= a(k) * re0 - b(k) * im0 + a(k + 1) * re1 - b(k + 1) * im1 + a(k + 2) * re2 - b(k + 2) * im2 +
                a(k + 3) * re3 - b(k + 3) * im3;
        imaginary -= a(k) * im0 + b(k) * re0 + a(k + 1) * im1 + b(k + 1) * re1 + a(k + 2) * im2 + b(k + 2) * re2 +
                     a(k + 3) * im3 + b(k + 3) * re3;
    }
    for (; k < column; ++k) {
        const Column re = from(allReal, column, k), im = from(allImaginary, column, k);
        real -= a(k) * re - b(k) * im;
        imaginary -= a(k) * im + b(k) * re;
    }
}

void SymmetricFactors::factor() {
    const Eigen::Index n = real_.rows();
    inverseReal_.resize(n);
    inverseImaginary_.resize(n);
    Vector pivotReal(n), pivotImaginary(n), weightReal(n), weightImaginary(n);
    for (Eigen::Index j = 0; j < n; ++j) {
        for (Eigen::Index k = 0; k < j; ++k) {
            weightReal(k) = real_(j, k) * pivotReal(k) - imaginary_(j, k) * pivotImaginary(k);
            weightImaginary(k) = real_(j, k) * pivotImaginary(k) + imaginary_(j, k) * pivotReal(k);
        }
        eliminate(j, weightReal, weightImaginary);
        pivotReal(j) = real_(j, j);
        pivotImaginary(j) = imaginary_(j, j);
        const double size = pivotReal(j) * pivotReal(j) + pivotImaginary(j) * pivotImaginary(j);
        const double x = inverseReal_(j) = pivotReal(j) / size;
        const double y = inverseImaginary_(j) = -pivotImaginary(j) / size;
        double *real = real_.col(j).data(), *imaginary = imaginary_.col(j).data();
        for (Eigen::Index i = j + 1; i < n; ++i) {
            const double re = real[i], im = imaginary[i];
            real[i] = re * x - im * y;
            imaginary[i] = re * y + im * x;
        }
    }
}

ComplexMatrix SymmetricFactors::substitute(const ComplexMatrix& rightSide) const {
    const Eigen::Index n = real_.rows();
    Matrix re = rightSide.real(), im = rightSide.imag();
    for (Eigen::Index c = 0; c < re.cols(); ++c) {
        for (Eigen::Index k = 0; k < n; ++k) {
            const double x = re(k, c), y = im(k, c);
            const Column lr = from(real_, k + 1, k), li = from(imaginary_, k + 1, k);
            from(re, k + 1, c) -= x * lr - y * li;
            from(im, k + 1, c) -= x * li + y * lr;
        }
        for (Eigen::Index k = n - 1; k >= 0; --k) {
            const Column lr = from(real_, k + 1, k), li = from(imaginary_, k + 1, k);
            const Column xr = from(std::as_const(re), k + 1, c), xi = from(std::as_const(im), k + 1, c);
            const double laterReal = lr.dot(xr) - li.dot(xi), laterImaginary = lr.dot(xi) + li.dot(xr);
            const double x = re(k, c), y = im(k, c);
            re(k, c) = x * inverseReal_(k) - y * inverseImaginary_(k) - laterReal;
            im(k, c) = x * inverseImaginary_(k) + y * inverseReal_(k) - laterImaginary;
        }
    }
    ComplexMatrix solution(re.rows(), re.cols());
    solution.real() = re;
    solution.imag() = im;
    return solution;
}

ComplexMatrix SymmetricFactors::left(const ComplexMatrix& solution, const ComplexMatrix& rightSide) const {
    return rightSide - product(systemReal_, systemImaginary_, solution);
}

ComplexMatrix SymmetricFactors::solve(const ComplexMatrix& rightSide, double exact) const {
    constexpr int corrections = 2;
    const double size = rightSide.norm();
    ComplexMatrix solution = substitute(rightSide);
    ComplexMatrix rest = left(solution, rightSide);
    for (int k = 0; k < corrections && rest.norm() > exact * size; ++k) {
        solution += substitute(rest);
        rest = left(solution, rightSide);
    }
    if (rest.norm() <= sound * size) return solution;
    ComplexMatrix whole(systemReal_.rows(), systemReal_.cols());
    whole.real() = systemReal_;
    whole.imag() = systemImaginary_;
    return DenseFactors(whole).solve(rightSide);
}

}  // namespace network
