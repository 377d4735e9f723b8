// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

namespace asterism::norms {

/// The three parameters of the LMS method: skewness (Box-Cox power), median (> 0), coefficient of
/// variation (> 0). Cole TJ, Green PJ. Stat Med 1992;11:1305-1319.
struct Lms {
    double l = 1;
    double m = 1;
    double s = 1;
};

/// z-score of `y` (> 0, same unit as m); nothing when y is not positive.
[[nodiscard]] std::optional<double> lms_z(double y, Lms lms);

/// The value at `z`; nothing when the distribution has no such value (1 + L S z <= 0).
[[nodiscard]] std::optional<double> lms_value(double z, Lms lms);

/// The same two with the WHO rule for the tails of weight: beyond 3 SD the scale goes on in steps
/// of the distance between the second and the third SD line (WHO Child Growth Standards, methods,
/// 2006, chapter 7). Not for length and head circumference, which have L = 1, and not for other LMS
/// references.
[[nodiscard]] std::optional<double> lms_z_with_who_tail(double y, Lms lms);
[[nodiscard]] std::optional<double> lms_value_with_who_tail(double z, Lms lms);

}  // namespace asterism::norms
