#pragma once
// Long work beside the drawing of frames: in a thread where there are threads, in a page in slices
// between frames.

#include <functional>
#include <memory>
#include <string>

namespace steelyard::app {

/// Calls a piece of work again and again until it says that the work is done.
class Beside {
public:
    /// Does a little, a few milliseconds where that can be, and says whether all is done. It
    /// touches nothing that frames change.
    using Piece = std::function<bool()>;

    Beside();
    Beside(const Beside&) = delete;
    Beside& operator=(const Beside&) = delete;
    Beside(Beside&&) noexcept;
    Beside& operator=(Beside&&) noexcept;
    ~Beside(); ///< gives the work up: waits for no more than a piece

    /// Begins; what was begun before is given up. The window is woken when it is done.
    void start(Piece piece);
    /// Asks for no further piece.
    void stop();
    /// True from the start until the last piece has ended.
    bool is_running() const;
    /// Why it ended before it was done, such as memory that ran out; empty when it did not.
    const std::string& fault() const;

private:
    struct Work;
    std::unique_ptr<Work> work_; ///< null = nothing was begun
};

} // namespace steelyard::app
