#pragma once
// Who calls whom: the desktop's program waits for events and takes a turn; in a page the browser
// calls, and nothing may wait.

#include <memory>

namespace steelyard::app {

/// What is done turn by turn until it ends.
class Turns {
public:
    Turns() = default;
    Turns(const Turns&) = delete;
    Turns& operator=(const Turns&) = delete;
    virtual ~Turns() = default;

    /// How long nothing needs to be done if nothing comes in [s]: 0 = at once, infinity = for ever.
    virtual double rest_s() = 0;
    /// Does what is due, whatever has come in: never longer than a frame.
    virtual void turn() = 0;
    virtual bool is_over() const = 0;
};

/// Takes turns until they are over: returns then on the desktop, and at once in a page, where the
/// browser goes on.
void take_turns(std::unique_ptr<Turns> turns);

/// Ends a rest as an event would. Any thread may call it; without a window nothing happens.
void wake();

} // namespace steelyard::app
