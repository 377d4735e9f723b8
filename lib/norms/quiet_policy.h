// SPDX-License-Identifier: MIT
#pragma once

#include <boost/math/policies/policy.hpp>

namespace asterism::norms {

/// Boost.Math without exceptions: an argument outside a function's domain gives NaN, overflow gives
/// infinity, and the caller turns both into "no such value". Doubles are not promoted, so that
/// every machine computes the same digits.
using QuietPolicy = boost::math::policies::policy<
    boost::math::policies::domain_error<boost::math::policies::ignore_error>,
    boost::math::policies::pole_error<boost::math::policies::ignore_error>,
    boost::math::policies::overflow_error<boost::math::policies::ignore_error>,
    boost::math::policies::underflow_error<boost::math::policies::ignore_error>,
    boost::math::policies::evaluation_error<boost::math::policies::ignore_error>,
    boost::math::policies::promote_double<false>>;

}  // namespace asterism::norms
