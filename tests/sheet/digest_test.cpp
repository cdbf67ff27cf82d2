// SHA-256 and base 64 against published examples.
#include "asperity/sheet/digest.h"

#include "asperity/base/digest.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

// NIST FIPS 180-4 example computations (csrc.nist.gov, SHA256.pdf): one and two blocks; the empty message
// from NIST CAVP.
TEST(Digest, MatchesThePublishedExamples) {
  EXPECT_EQ(sha256_hex("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256_hex("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(sha256_hex(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

// RFC 4648, section 10.
TEST(Base64, MatchesTheTestVectors) {
  EXPECT_EQ(base64(""), "");
  EXPECT_EQ(base64("f"), "Zg==");
  EXPECT_EQ(base64("fo"), "Zm8=");
  EXPECT_EQ(base64("foo"), "Zm9v");
  EXPECT_EQ(base64("foob"), "Zm9vYg==");
  EXPECT_EQ(base64("fooba"), "Zm9vYmE=");
  EXPECT_EQ(base64("foobar"), "Zm9vYmFy");
}

TEST(InputFile, AMissingFileHasNoDigest) {
  EXPECT_TRUE(input_file("/no/such/file.toml").sha256.empty());
  EXPECT_EQ(input_file("/no/such/file.toml").name, "file.toml");
}

} // namespace
} // namespace asperity
