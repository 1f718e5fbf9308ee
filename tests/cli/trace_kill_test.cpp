#include <fcntl.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <random>
#include <thread>

#include "ohmtrail/netlist/read.hpp"
#include "support/process.hpp"
#include "support/random_cases.hpp"

namespace ohmtrail::test {
namespace {

/// A guided search at the other end of two pipes.
class Session {
 public:
  explicit Session(const std::string& file) {
    std::array<int, 2> in{}, out{};
    if (::pipe2(in.data(), O_CLOEXEC) != 0 || ::pipe2(out.data(), O_CLOEXEC) != 0)
      throw std::runtime_error("no pipe");
    child_ = ::fork();
    if (child_ == 0) {
      ::dup2(in[0], 0);
      ::dup2(out[1], 1);
      ::execl(OHMTRAIL_PROGRAM, "ohmtrail", "trace", file.c_str(), nullptr);
      ::_exit(127);
    }
    ::close(in[0]);
    ::close(out[1]);
    to_ = in[1];
    from_ = out[0];
  }
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;
  ~Session() { kill(); }

  void type(const std::string& line) {
    const std::string text = line + "\n";
    static_cast<void>(::write(to_, text.data(), text.size()));
  }
  /// What it says up to the next prompt, or to its end.
  std::string heard() {
    std::string text;
    std::array<char, 4096> block;
    while (!text.ends_with("> ")) {
      const ssize_t got = ::read(from_, block.data(), block.size());
      if (got <= 0) break;
      text.append(block.data(), static_cast<std::size_t>(got));
    }
    return text;
  }
  void kill() {
    if (child_ <= 0) return;
    ::kill(child_, SIGKILL);
    ::waitpid(child_, nullptr, 0);
    ::close(to_);
    ::close(from_);
    child_ = -1;
  }

 private:
  pid_t child_ = -1;
  int to_ = -1, from_ = -1;
};

std::size_t readings_in(const std::string& path) {
  const auto read = netlist::read(file_content(path));
  EXPECT_TRUE(read) << "the file is not whole";
  return read ? read->system.readings.size() : 0;
}

// A reading counts as accepted once the next question is asked. It is typed, and the program is killed at any
// moment after that.
TEST(Trace, KilledAtAnyMomentLosesNoAcceptedReading) {
  const TemporaryFolder folder;
  const std::string file = folder / "boat.json";
  ::signal(SIGPIPE, SIG_IGN);
  std::mt19937 random(20);
  std::size_t accepted = 0;
  const int kills = random_cases(200);
  for (int k = 0; k < kills; ++k) {
    if (k % 4 == 0) {
      std::filesystem::copy_file(OHMTRAIL_SOURCE_DIR "/netlists/camper-12v.json", file,
                                 std::filesystem::copy_options::overwrite_existing);
      accepted = readings_in(file);
    }
    Session session(file);
    const std::string first = session.heard();
    if (first.find("What is switched on?") != std::string::npos) {
      session.type("1");
      if (!session.heard().ends_with("> ")) continue;
    }
    session.type("0.05");
    const bool asked_again = k % 2 == 0;
    if (asked_again) {
      static_cast<void>(session.heard());
    } else {
      std::this_thread::sleep_for(std::chrono::microseconds(random() % 8000));
    }
    session.kill();
    const std::size_t now = readings_in(file);
    if (asked_again && first.ends_with("> ")) {
      EXPECT_EQ(now, accepted + 1) << k;
    } else {
      EXPECT_GE(now, accepted) << k;
      EXPECT_LE(now, accepted + 1) << k;
    }
    accepted = now;
  }
}

}  // namespace
}  // namespace ohmtrail::test
