// How much of a number's spread each input explains by itself, and the band the number lies in.
#pragma once

#include "asperity/tolerance/linear_fit.h"

#include <vector>

namespace asperity {

/// First-order shares of variance V[E(y | g_i)] / V[y] (first-order Sobol indices), one a column of
/// `deviates` (standard normal, one row a draw). y is fitted by a sum of functions of one deviate each: g
/// itself and the Legendre polynomials of order 2 to `degree` of its probability; the variance of each fitted
/// function, less what chance puts into it, over that of y [Saltelli and others, Global Sensitivity Analysis:
/// The Primer, 2008; Sudret 2008, Reliab. Eng. Syst. Safety 93, 964, for indices from a polynomial fit; both
/// from memory]. Exact for sums of straight lines. Empty where y does not vary or draws are fewer than twice
/// the coefficients.
std::vector<double> first_order_shares(const Matrix &deviates, const std::vector<double> &y, int degree);

/// The degree that so many draws of so many inputs carry: 3, less where draws are few; 0 = none.
int degree_for(std::size_t draws, std::size_t inputs);

struct Spread {
  double mean = 0, standard_deviation = 0; ///< JCGM 101:2008, 7.6
  double low = 0, high = 0;                ///< probabilistically symmetric 95 % interval, JCGM 101:2008, 7.7
};
/// y must not be empty.
Spread spread_of(std::vector<double> y);

} // namespace asperity
