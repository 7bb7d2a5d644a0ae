#include "mechanics/resistance/resistance_kinds.h"

namespace steelyard::mechanics {

namespace {

template <typename Variant> struct RowsOf;
template <typename... Kinds> struct RowsOf<std::variant<Kinds...>> {
    using Rows = std::tuple<ResistanceKind<Kinds>...>;
};
static_assert(std::is_same_v<std::remove_const_t<decltype(kResistanceKinds)>,
                             RowsOf<decltype(Resistance::kind)>::Rows>,
              "kResistanceKinds needs one row for each kind of the variant, in its order");

} // namespace

const std::vector<std::string_view>& resistance_kind_names() {
    static const std::vector<std::string_view> kNames =
        std::apply([](const auto&... rows) { return std::vector<std::string_view>{rows.name...}; },
                   kResistanceKinds);
    return kNames;
}

std::string_view kind_name(const Resistance& resistance) {
    return std::visit([](const auto& kind) { return row_of(kind).name; }, resistance.kind);
}

std::string_view usual_name(const Resistance& resistance) {
    return std::visit([](const auto& kind) { return row_of(kind).usual; }, resistance.kind);
}

SizeIs size_is(const Resistance& resistance) {
    return std::visit([](const auto& kind) { return row_of(kind).size_is; }, resistance.kind);
}

double* size_in(Resistance& resistance) {
    return std::visit(
        [](auto& kind) {
            const auto size = row_of(kind).size;
            return size != nullptr ? &(kind.*size) : nullptr;
        },
        resistance.kind);
}

double carried_mass(const Resistance& resistance) {
    return std::visit(
        [](const auto& kind) {
            const auto& row = row_of(kind);
            return row.size_is == SizeIs::mass ? kind.*row.size : 0.0;
        },
        resistance.kind);
}

BodyPoint carrier_of(const Resistance& resistance) {
    return std::visit([](const auto& kind) { return row_of(kind).carrier(kind); }, resistance.kind);
}

BodyPoint* moving_point_in(Resistance& resistance) {
    return std::visit(
        [](auto& kind) {
            const auto moves = row_of(kind).moves;
            return moves != nullptr ? &(kind.*moves) : nullptr;
        },
        resistance.kind);
}

Vec3* fixture_in(Resistance& resistance) {
    return std::visit(
        [](auto& kind) {
            const auto fixture = row_of(kind).fixture;
            return fixture != nullptr ? fixture(kind) : nullptr;
        },
        resistance.kind);
}

std::optional<Vec3> fixture_of(const Resistance& resistance) {
    Resistance copy = resistance;
    const Vec3* place_m = fixture_in(copy);
    return place_m != nullptr ? std::optional(*place_m) : std::nullopt;
}

std::string_view fixture_name(const Resistance& resistance) {
    return std::visit([](const auto& kind) { return row_of(kind).fixture_name; }, resistance.kind);
}

double* slack_length_in(Resistance& resistance) {
    return std::visit(
        [](auto& kind) {
            const auto slack = row_of(kind).slack_length;
            return slack != nullptr ? &(kind.*slack) : nullptr;
        },
        resistance.kind);
}

} // namespace steelyard::mechanics
