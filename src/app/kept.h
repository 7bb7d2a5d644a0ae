#pragma once
// A value that costs something to make, remembered together with what it was made from.

#include <optional>
#include <utility>

namespace steelyard::app {

/// Makes a value when it is first asked for, and again only when what it is made from has changed.
/// `From` is everything that the value depends on, and can be compared.
template <typename From, typename Value> class Kept {
public:
    template <typename Make> const Value& of(const From& from, Make make) {
        if (!from_ || !(*from_ == from)) {
            value_ = make();
            from_ = from;
        }
        return value_;
    }

private:
    std::optional<From> from_;
    Value value_{};
};

} // namespace steelyard::app
