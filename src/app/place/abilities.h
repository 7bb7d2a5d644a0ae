#pragma once
// What some places can do and others cannot. A place that can, derives from the ability; whoever
// wants to use one asks for it by ability_of.

#include "app/look/narration.h"
#include "app/look/style.h"
#include "app/opened_file.h"
#include "app/own/kept_as.h"
#include "app/platform/window.h"
#include "lesson/lesson.h"

#include <optional>
#include <string>

namespace steelyard::app {

class Place;
struct Surroundings;

class Undoing {
public:
    virtual bool can_undo() const = 0;
    virtual bool can_redo() const = 0;
    virtual void undo() = 0;
    virtual void redo() = 0;

protected:
    ~Undoing() = default;
};

/// Something can be chosen from a shelf.
class Choosing {
public:
    /// What is chosen, as a word.
    virtual const char* shelf_word() const = 0;
    virtual void open_shelf() = 0;

protected:
    ~Choosing() = default;
};

/// It has parts that can be gone to.
class Parted {
public:
    virtual void enter_part(const std::string& part) = 0;

protected:
    ~Parted() = default;
};

/// It shows what stands in files.
class Opening {
public:
    /// @param file  one of those that the place's line in the list says it opens
    virtual void open(const OpenedFile& file, Surroundings& around) = 0;

protected:
    ~Opening() = default;
};

/// What is on its stage may be taken up by other places.
class Lending {
public:
    /// Empty while there is nothing on the stage.
    virtual std::optional<lesson::LessonStage> stage() const = 0;

protected:
    ~Lending() = default;
};

/// What is on its stage can be kept among the person's own setups.
class Keeping {
public:
    /// What is to be kept; empty while there is nothing on the stage.
    virtual std::optional<setup::Setup> to_keep() const = 0;
    virtual const KeptAs& kept_as() const = 0;
    /// It was kept, under this name.
    virtual void was_kept(const std::string& name, const OwnFile& file) = 0;

protected:
    ~Keeping() = default;
};

/// It takes up what is on the stage of another place.
class TakingUp {
public:
    virtual void take_up(const lesson::LessonStage& stage, Surroundings& around) = 0;

protected:
    ~TakingUp() = default;
};

/// It has further windows, such as the presenter's, which are drawn also while the place is not the
/// present one.
class FurtherWindows {
public:
    /// True when something came in for a further window since the last time.
    virtual bool beside_stirred() = 0;
    /// Seconds until a further window has something new to show by itself; empty = never.
    virtual std::optional<double> beside_due_s() const = 0;
    /// Draws further windows. The main one is current before and after.
    /// @return what was drawn, to be narrated; null when nothing was
    virtual const Narration* run_beside(const Window& main, const Style& style) = 0;

protected:
    ~FurtherWindows() = default;
};

/// An ability of a place; null when it has not got it.
template <typename Ability> Ability* ability_of(Place* place) {
    return dynamic_cast<Ability*>(place);
}

} // namespace steelyard::app
