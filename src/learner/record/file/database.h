#pragma once
// One SQLite file, its statements and transactions. Nothing above src/learner/record/ sees SQLite.

#include <tl/expected.hpp>

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace steelyard::learner {

/// What went wrong with the record.
enum class Trouble {
    cannot_open, ///< no folder, no permission
    read_only,   ///< can be read, not written
    full,        ///< the disk is full, or cannot be written
    busy,        ///< another program held it for too long
    damaged,     ///< the file is no longer what SQLite wrote
    newer,       ///< made by a later version of Steelyard
    foreign,     ///< an SQLite file of some other program
    unnamed,     ///< nobody said whose record is meant
    refused,     ///< what was asked cannot be: the sentence says why
};

struct RecordError {
    Trouble trouble = Trouble::cannot_open;
    std::string message; ///< to the learner: what, where, what to do; names no option of a verb
};

template <typename T> using Recorded = tl::expected<T, RecordError>;

/// A prepared statement. Parameters and columns count from 0.
class Statement {
public:
    Statement(sqlite3_stmt* statement, sqlite3* database);
    ~Statement();
    Statement(Statement&& other) noexcept;
    Statement& operator=(Statement&& other) noexcept;

    /// Binds every parameter in order and starts anew.
    template <typename... Values> Statement& with(const Values&... values) {
        restart();
        bound_ = 0;
        (bind(bound_++, values), ...);
        return *this;
    }
    /// Binds the next parameter.
    template <typename Value> Statement& also(const Value& value) {
        bind(bound_++, value);
        return *this;
    }

    /// Steps to the next row. @return false after the last one
    Recorded<bool> row();
    /// Steps to the end.
    Recorded<void> run();
    /// Steps to the end, and calls a function with the statement at each row.
    template <typename Visit> Recorded<void> for_each_row(const Visit& visit) {
        while (true) {
            const Recorded<bool> more = row();
            if (!more)
                return tl::make_unexpected(more.error());
            if (!*more)
                return {};
            visit(*this);
        }
    }

    std::int64_t integer(int column) const;
    double number(int column) const; ///< 0 where there is none
    std::string text(int column) const;
    bool is_null(int column) const;

private:
    void restart();
    void bind(int index, std::int64_t value);
    void bind(int index, int value) { bind(index, static_cast<std::int64_t>(value)); }
    void bind(int index, bool value) { bind(index, static_cast<std::int64_t>(value ? 1 : 0)); }
    void bind(int index, double value);
    void bind(int index, std::string_view value);
    void bind(int index, const std::string& value) { bind(index, std::string_view(value)); }
    void bind(int index, const char* value) { bind(index, std::string_view(value)); }

    sqlite3_stmt* statement_;
    sqlite3* database_;
    int bound_ = 0; ///< parameters
};

enum class Access {
    write,  ///< made when missing
    read,   ///< must exist
    frozen, ///< read where nothing beside it can be written; no other program writes it meanwhile
};

class Database {
public:
    static Recorded<Database> open(const std::filesystem::path& path, Access access);
    ~Database();
    Database(Database&& other) noexcept;
    Database& operator=(Database&& other) noexcept;

    /// Runs statements that give no rows.
    Recorded<void> run(const std::string& sql);
    Recorded<Statement> prepare(std::string_view sql);
    /// The first column of the first row.
    Recorded<std::int64_t> integer(std::string_view sql);
    Recorded<std::string> text(std::string_view sql);
    std::int64_t last_id() const;
    /// Rows that the last statement added, changed or deleted.
    int changes() const;

    /// Pages fetched from the file since it was opened: what the work so far has cost.
    int pages_read() const;

    /// Whether the file is no longer where it was opened: deleted, moved away or replaced. What is
    /// written to it meanwhile is in no file that has a name.
    bool has_moved() const;

    /// See Record::tell_when_waiting.
    void tell_when_waiting(std::function<void()> tell);

    /// Copies the whole file, also while others use it.
    Recorded<void> copy_to(const std::filesystem::path& path);

    const std::filesystem::path& path() const { return path_; }

private:
    Database(sqlite3* database, std::filesystem::path path)
        : database_(database), path_(std::move(path)) {}

    sqlite3* database_;
    std::filesystem::path path_;
    std::unique_ptr<std::function<void()>> waiting_; ///< where SQLite can find it
};

/// Everything between its begin and commit happens, or nothing: it is taken back when it goes out
/// of scope without commit.
class Transaction {
public:
    /// Waits for other writers.
    static Recorded<Transaction> begin(Database& database);
    /// For reading alone: waits for nobody, and all that is read is of one moment.
    static Recorded<Transaction> begin_reading(Database& database);
    ~Transaction();
    Transaction(Transaction&& other) noexcept : database_(other.database_) {
        other.database_ = nullptr;
    }
    Transaction& operator=(Transaction&&) = delete;

    Recorded<void> commit();

private:
    explicit Transaction(Database& database) : database_(&database) {}
    static Recorded<Transaction> begin_by(Database& database, const char* sql);
    Database* database_;
};

} // namespace steelyard::learner
