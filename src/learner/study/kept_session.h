#pragma once
// A session in progress as text, so that it goes on where it was after the program was closed or
// the machine was switched off.

#include "learner/study/session.h"

#include <optional>
#include <string>
#include <string_view>

namespace steelyard::learner {

/// A session that was not ended.
struct KeptSession {
    Session session;
    std::string code;      ///< of the present question
    bool answered = false; ///< an attempt at it was kept already
};

/// The session with its present question, as JSON. What it came to so far goes along; how the
/// staircase stood when it began does not.
std::string write_session(const Session& session, const Course& course, const Asking& asking);

/// Reads such a text. Nothing where it is no such text, or names a skill or a family that the
/// course does not have.
std::optional<KeptSession> read_session(std::string_view text, const Course& course);

/// Takes a session up again: the present question anew or, where an attempt at it was kept, the
/// next. Nothing where the bank can no longer make it, or the session has come to its end.
std::optional<Asking> resume_session(KeptSession& kept, const Present& present);

} // namespace steelyard::learner
