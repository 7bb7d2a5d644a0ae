#pragma once
// The questions of a part of a sheet, one at a time.

#include "problems/bank/bank.h"
#include "problems/question/question.h"

#include <cstddef>
#include <iterator>
#include <string>
#include <vector>

namespace steelyard::publish {

/// Questions in order: kept as they are, or made anew from their codes whenever one is asked for,
/// so that a long sheet takes hardly more memory than a short one.
class SheetQuestions {
public:
    SheetQuestions() = default;
    /// Questions to keep.
    SheetQuestions(std::vector<problems::Question> kept) : kept_(std::move(kept)) {}
    /// Questions to make: codes of a bank, which must outlive this.
    SheetQuestions(const problems::Bank& bank, std::vector<std::string> codes)
        : bank_(&bank), codes_(std::move(codes)) {}

    std::size_t size() const { return bank_ != nullptr ? codes_.size() : kept_.size(); }
    bool empty() const { return size() == 0; }
    problems::Question operator[](std::size_t index) const;

    /// Goes through the questions; each is made when it is looked at.
    class Iterator {
    public:
        using iterator_category = std::input_iterator_tag;
        using value_type = problems::Question;
        using difference_type = std::ptrdiff_t;
        using pointer = void;
        using reference = problems::Question;

        Iterator(const SheetQuestions& questions, std::size_t index)
            : questions_(&questions), index_(index) {}
        problems::Question operator*() const { return (*questions_)[index_]; }
        Iterator& operator++() {
            ++index_;
            return *this;
        }
        bool operator==(const Iterator& other) const { return index_ == other.index_; }

    private:
        const SheetQuestions* questions_;
        std::size_t index_;
    };
    Iterator begin() const { return {*this, 0}; }
    Iterator end() const { return {*this, size()}; }

private:
    std::vector<problems::Question> kept_;
    const problems::Bank* bank_ = nullptr; ///< null = the questions are kept
    std::vector<std::string> codes_;
};

} // namespace steelyard::publish
