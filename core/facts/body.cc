#include "facts/body.h"

namespace steamworthy::facts {

Body::Body() = default;
Body::Body(const Body& other) = default;
Body::Body(Body&& other) noexcept = default;
Body& Body::operator=(const Body& other) = default;
Body& Body::operator=(Body&& other) noexcept = default;
Body::~Body() = default;

bool Body::are_equal(const AnyKind& a, const AnyKind& b) { return a == b; }

}  // namespace steamworthy::facts
