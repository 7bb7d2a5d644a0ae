#include "learner/record/exchange/exam_json.h"

namespace steelyard::learner {

namespace {

Json item_json(const ExamItem& item) {
    return {{"code", item.code},
            {"skill", item.skill},
            {"family", item.family},
            {"answer", item.answer},
            {"come_back", item.come_back ? 1 : 0},
            {"took_ms", item.took_ms},
            {"foreseen", item.foreseen}};
}

/// Takes members out of an object, and notes whether all were there and possible.
class Members {
public:
    explicit Members(const Json& object) : object_(object), good_(object.is_object()) {}

    std::int64_t whole(const char* name, std::int64_t least, std::int64_t most) {
        const auto read = good_ ? whole_of(member_of(object_, name)) : std::nullopt;
        good_ = read && *read >= least && *read <= most;
        return good_ ? *read : least;
    }
    double share(const char* name) {
        const auto read = good_ ? number_of(member_of(object_, name)) : std::nullopt;
        good_ = read && *read >= 0.0 && *read <= 1.0;
        return good_ ? *read : 0.0;
    }
    std::string words(const char* name, bool may_be_empty) {
        auto read = good_ ? words_of(member_of(object_, name)) : std::nullopt;
        good_ = read && (may_be_empty || !read->empty());
        return good_ ? std::move(*read) : std::string();
    }
    bool good() const { return good_; }

private:
    const Json& object_;
    bool good_;
};

std::optional<ExamItem> item_from(const Json& object) {
    Members members(object);
    ExamItem item;
    item.code = members.words("code", false);
    item.skill = members.words("skill", true);
    item.family = members.words("family", true);
    item.answer = members.words("answer", true);
    const bool is_earlier = object.is_object() && member_of(object, "come_back") == nullptr;
    item.come_back = members.whole(is_earlier ? "flagged" : "come_back", 0, 1) != 0;
    item.took_ms = members.whole("took_ms", 0, kLatest_ms);
    item.foreseen = members.share("foreseen");
    return members.good() ? std::optional(std::move(item)) : std::nullopt;
}

} // namespace

Json json_of(const KeptExam& kept) {
    const Exam& exam = kept.exam;
    Json items = Json::array();
    for (const ExamItem& item : exam.items)
        items.push_back(item_json(item));
    return {{"title", exam.title},
            {"seed", static_cast<std::int64_t>(exam.seed)},
            {"pass_share", exam.pass_share},
            {"started_ms", exam.started_ms},
            {"allowed_ms", exam.allowed_ms},
            {"used_ms", exam.used_ms},
            {"seen_ms", exam.seen_ms},
            {"item", exam.at},
            {"finished_ms", exam.finished_ms},
            {"right_answers", kept.right_answers},
            {"questions", kept.questions},
            {"items", std::move(items)}};
}

tl::expected<KeptExam, Fault> exam_from(const Json& object) {
    const auto fault = [] {
        return tl::make_unexpected(Fault("an exam with missing or impossible members"));
    };
    const Json* items = object.is_object() ? member_of(object, "items") : nullptr;
    if (items == nullptr || !items->is_array() || items->empty())
        return fault();
    const auto count = static_cast<std::int64_t>(items->size());
    constexpr auto kLeast = std::numeric_limits<std::int64_t>::min();
    constexpr auto kMost = std::numeric_limits<std::int64_t>::max();
    Members members(object);
    KeptExam kept;
    Exam& exam = kept.exam;
    exam.title = members.words("title", true);
    exam.seed = static_cast<std::uint64_t>(members.whole("seed", kLeast, kMost));
    exam.pass_share = members.share("pass_share");
    exam.started_ms = members.whole("started_ms", kEarliest_ms, kLatest_ms);
    exam.allowed_ms = members.whole("allowed_ms", 1, kLongestExam_ms);
    exam.used_ms = members.whole("used_ms", 0, exam.allowed_ms);
    exam.seen_ms = members.whole("seen_ms", 0, kLatest_ms);
    exam.at = static_cast<std::size_t>(members.whole("item", 0, count - 1));
    exam.finished_ms = members.whole("finished_ms", 0, kLatest_ms);
    exam.finished = exam.finished_ms != 0;
    kept.questions = static_cast<int>(members.whole("questions", 0, count));
    kept.right_answers = static_cast<int>(members.whole("right_answers", 0, kept.questions));
    if (!members.good())
        return fault();
    for (const Json& one : *items) {
        auto item = item_from(one);
        if (!item)
            return tl::make_unexpected(
                Fault("an exam whose items have missing or impossible members"));
        exam.items.push_back(std::move(*item));
    }
    return kept;
}

} // namespace steelyard::learner
