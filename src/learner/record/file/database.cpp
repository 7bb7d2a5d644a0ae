#include "learner/record/file/database.h"

#include "learner/record/file/private_files.h"

#include <fmt/format.h>

#include <chrono>
#include <sqlite3.h>
#include <thread>
#include <utility>

namespace steelyard::learner {

namespace {

/// How long one program waits for another's writing [ms]. A write takes a few; an import of a
/// million answers some seconds.
constexpr int kPatience_ms = 20000;

Trouble trouble_of(int code) {
    switch (code & 0xFF) {
    case SQLITE_FULL:
    case SQLITE_IOERR:
        return Trouble::full;
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return Trouble::busy;
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
        return Trouble::damaged;
    case SQLITE_READONLY:
        return Trouble::read_only;
    default:
        return Trouble::cannot_open;
    }
}

const char* advice(Trouble trouble) {
    switch (trouble) {
    case Trouble::full:
        return "The last change was not kept; what was kept before is safe. Make room on the disk, "
               "then try again.";
    case Trouble::busy:
        return "Another Steelyard is writing; try again in a moment.";
    case Trouble::damaged:
        return "Start Steelyard again: it will set the file aside and open the newest good backup.";
    case Trouble::read_only:
        return "Nothing can be kept there. Give yourself the right to write, or start Steelyard "
               "with another folder for the record.";
    default:
        return "See who may read and write there, or start Steelyard with another folder for the "
               "record.";
    }
}

RecordError error_of(sqlite3* database, int code, const std::string& file) {
    const Trouble trouble = trouble_of(code);
    const char* says = database != nullptr ? sqlite3_errmsg(database) : sqlite3_errstr(code);
    return {trouble, fmt::format("The record {}: {}. {}", file, says, advice(trouble))};
}

std::string file_of(sqlite3* database) {
    const char* name = sqlite3_db_filename(database, "main");
    return name != nullptr ? name : "";
}

/// Takes a journal into its file and says in the header that there is none. @return false where
/// another program has the file open, or nothing can be written
bool ended_journal(sqlite3* database) {
    if (sqlite3_db_readonly(database, "main") != 0)
        return true;
    sqlite3_busy_timeout(database, 0);
    return sqlite3_exec(database, "PRAGMA journal_mode = DELETE", nullptr, nullptr, nullptr) ==
           SQLITE_OK;
}

/// Called by SQLite as often as it finds the file taken. @return 0 to give up
int wait_and_tell(void* tell, int times) {
    constexpr std::chrono::milliseconds kPause{50};
    constexpr int kTellAfter = 20;      // a second
    constexpr int kPatience = 120 * 20; // two minutes
    if (times == kTellAfter)
        (*static_cast<const std::function<void()>*>(tell))();
    std::this_thread::sleep_for(kPause);
    return times < kPatience ? 1 : 0;
}

/// A path as SQLite's URI: everything but plain characters escaped.
std::string uri_of(const std::filesystem::path& path, std::string_view query) {
    std::string uri = "file:";
    for (const char c : path.string()) {
        const auto byte = static_cast<unsigned char>(c);
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                           (c >= '0' && c <= '9') || c == '/' || c == '.' || c == '-' || c == '_';
        uri += plain ? std::string(1, c) : fmt::format("%{:02X}", byte);
    }
    return uri + std::string(query);
}

} // namespace

Statement::Statement(sqlite3_stmt* statement, sqlite3* database)
    : statement_(statement), database_(database) {}

Statement::~Statement() {
    sqlite3_finalize(statement_);
}

Statement::Statement(Statement&& other) noexcept
    : statement_(std::exchange(other.statement_, nullptr)), database_(other.database_) {}

Statement& Statement::operator=(Statement&& other) noexcept {
    std::swap(statement_, other.statement_);
    std::swap(database_, other.database_);
    return *this;
}

void Statement::restart() {
    sqlite3_reset(statement_);
    sqlite3_clear_bindings(statement_);
}

void Statement::bind(int index, std::int64_t value) {
    sqlite3_bind_int64(statement_, index + 1, value);
}

void Statement::bind(int index, double value) {
    sqlite3_bind_double(statement_, index + 1, value);
}

void Statement::bind(int index, std::string_view value) {
    // SQLITE_TRANSIENT is a cast that -Wold-style-cast and clang-tidy dislike, but it is what makes
    // SQLite keep its own copy.
    sqlite3_bind_text(statement_, index + 1, value.data(), static_cast<int>(value.size()),
                      SQLITE_TRANSIENT);
}

Recorded<bool> Statement::row() {
    const int code = sqlite3_step(statement_);
    if (code == SQLITE_ROW)
        return true;
    if (code == SQLITE_DONE)
        return false;
    return tl::make_unexpected(
        error_of(database_, sqlite3_extended_errcode(database_), file_of(database_)));
}

Recorded<void> Statement::run() {
    return for_each_row([](const Statement&) {});
}

std::int64_t Statement::integer(int column) const {
    return sqlite3_column_int64(statement_, column);
}

double Statement::number(int column) const {
    return sqlite3_column_double(statement_, column);
}

std::string Statement::text(int column) const {
    const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(statement_, column));
    const int bytes = sqlite3_column_bytes(statement_, column);
    return text != nullptr ? std::string(text, static_cast<std::size_t>(bytes)) : std::string();
}

bool Statement::is_null(int column) const {
    return sqlite3_column_type(statement_, column) == SQLITE_NULL;
}

Recorded<Database> Database::open(const std::filesystem::path& path, Access access) {
    const char* query = access == Access::write  ? "?mode=rwc"
                        : access == Access::read ? "?mode=ro"
                                                 : "?mode=ro&immutable=1";
    const int flags = SQLITE_OPEN_URI | SQLITE_OPEN_NOMUTEX |
                      (access == Access::write ? SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE
                                               : SQLITE_OPEN_READONLY);
    if (access == Access::write)
        make_private_file(path); // SQLite gives the files beside it the same rights
    sqlite3* opened = nullptr;
    const int code = sqlite3_open_v2(uri_of(path, query).c_str(), &opened, flags, nullptr);
    Database database(opened, path);
    if (code != SQLITE_OK)
        return tl::make_unexpected(error_of(opened, code, path.string()));
    sqlite3_extended_result_codes(opened, 1);
    sqlite3_busy_timeout(opened, kPatience_ms);
    return database;
}

Database::~Database() {
    if (database_ == nullptr)
        return;
    // A journal is deleted by its name when the last program closes the file: where the file has
    // gone from its name, that journal may be another's by now. Nor is one deleted that the header
    // still speaks of, so that a missing one was deleted by somebody else: see journal_is_lost().
    int keep_journal = has_moved() || !ended_journal(database_) ? 1 : -1;
    sqlite3_file_control(database_, "main", SQLITE_FCNTL_PERSIST_WAL, &keep_journal);
    sqlite3_close_v2(database_);
}

bool Database::has_moved() const {
    int moved = 0;
    return sqlite3_file_control(database_, "main", SQLITE_FCNTL_HAS_MOVED, &moved) == SQLITE_OK &&
           moved != 0;
}

Database::Database(Database&& other) noexcept
    : database_(std::exchange(other.database_, nullptr)), path_(std::move(other.path_)),
      waiting_(std::move(other.waiting_)) {}

Database& Database::operator=(Database&& other) noexcept {
    std::swap(database_, other.database_);
    std::swap(path_, other.path_);
    std::swap(waiting_, other.waiting_);
    return *this;
}

Recorded<void> Database::run(const std::string& sql) {
    if (sqlite3_exec(database_, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK)
        return {};
    return tl::make_unexpected(
        error_of(database_, sqlite3_extended_errcode(database_), path_.string()));
}

Recorded<Statement> Database::prepare(std::string_view sql) {
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(database_, sql.data(), static_cast<int>(sql.size()), &statement,
                           nullptr) != SQLITE_OK)
        return tl::make_unexpected(
            error_of(database_, sqlite3_extended_errcode(database_), path_.string()));
    return Statement(statement, database_);
}

Recorded<std::int64_t> Database::integer(std::string_view sql) {
    Recorded<Statement> statement = prepare(sql);
    if (!statement)
        return tl::make_unexpected(statement.error());
    const Recorded<bool> found = statement->row();
    if (!found)
        return tl::make_unexpected(found.error());
    return *found ? statement->integer(0) : 0;
}

Recorded<std::string> Database::text(std::string_view sql) {
    Recorded<Statement> statement = prepare(sql);
    if (!statement)
        return tl::make_unexpected(statement.error());
    const Recorded<bool> found = statement->row();
    if (!found)
        return tl::make_unexpected(found.error());
    return *found ? statement->text(0) : std::string();
}

std::int64_t Database::last_id() const {
    return sqlite3_last_insert_rowid(database_);
}

int Database::changes() const {
    return sqlite3_changes(database_);
}

void Database::tell_when_waiting(std::function<void()> tell) {
    waiting_ = std::make_unique<std::function<void()>>(std::move(tell));
    sqlite3_busy_handler(database_, wait_and_tell, waiting_.get());
}

int Database::pages_read() const {
    int now = 0;
    int highest = 0;
    sqlite3_db_status(database_, SQLITE_DBSTATUS_CACHE_MISS, &now, &highest, 0);
    return now;
}

Recorded<void> Database::copy_to(const std::filesystem::path& path) {
    Recorded<Database> target = open(path, Access::write);
    if (!target)
        return tl::make_unexpected(target.error());
    sqlite3_backup* copying = sqlite3_backup_init(target->database_, "main", database_, "main");
    if (copying == nullptr)
        return tl::make_unexpected(error_of(
            target->database_, sqlite3_extended_errcode(target->database_), path.string()));
    const int stepped = sqlite3_backup_step(copying, -1);
    const int finished = sqlite3_backup_finish(copying);
    if (stepped == SQLITE_DONE && finished == SQLITE_OK)
        return {};
    const int code = stepped != SQLITE_DONE ? stepped : finished;
    return tl::make_unexpected(error_of(nullptr, code, path.string()));
}

Recorded<Transaction> Transaction::begin(Database& database) {
    return begin_by(database, "BEGIN IMMEDIATE");
}

Recorded<Transaction> Transaction::begin_reading(Database& database) {
    return begin_by(database, "BEGIN");
}

Recorded<Transaction> Transaction::begin_by(Database& database, const char* sql) {
    if (const auto begun = database.run(sql); !begun)
        return tl::make_unexpected(begun.error());
    return Transaction(database);
}

Transaction::~Transaction() {
    // Fails when SQLite has taken it back already, which comes to the same.
    if (database_ != nullptr)
        static_cast<void>(database_->run("ROLLBACK"));
}

Recorded<void> Transaction::commit() {
    auto committed = database_->run("COMMIT");
    if (committed)
        database_ = nullptr;
    return committed;
}

} // namespace steelyard::learner
