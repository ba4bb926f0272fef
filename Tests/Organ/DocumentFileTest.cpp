// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/DocumentFile.h"

#include "Organ/DocumentLimits.h"
#include "Organ/SampleDocuments.h"

#include <gtest/gtest.h>

#include <sys/stat.h>
#include <unistd.h>

namespace stopwright
{

namespace
{

namespace fs = std::filesystem;

bool contains (const std::string& text, const std::string& part)
{
    return text.find (part) != std::string::npos;
}

std::string refusalToRead (const fs::path& file)
{
    return refusalOf ([&file] { readDocumentFile (file); });
}

} // namespace

TEST (DocumentFile, ReadsBackWhatWasWritten)
{
    const TemporaryFolder folder;
    const std::string text = "{\n  \"\xC2\xB5\": 1\n}\n";
    writeDocumentFile (text, folder.file ("a.json"));
    EXPECT_EQ (readDocumentFile (folder.file ("a.json")), text);
    writeDocumentFile ("short", folder.file ("a.json"));
    EXPECT_EQ (readDocumentFile (folder.file ("a.json")), "short");
    EXPECT_EQ (folder.content(), std::vector<std::string> { "a.json" }); // no temporary file is left
}

TEST (DocumentFile, RefusesWhatIsNoRegularFile)
{
    const TemporaryFolder folder;
    ASSERT_EQ (::mkfifo (folder.file ("pipe").c_str(), 0600), 0);
    EXPECT_TRUE (contains (refusalToRead (folder.file ("pipe")), "a pipe"));
    EXPECT_TRUE (contains (refusalToRead (folder.file (".")), "a directory"));
    EXPECT_TRUE (contains (refusalToRead ("/dev/zero"), "a device"));
    EXPECT_TRUE (contains (refusalToRead (folder.file ("none")), "cannot be found"));
    EXPECT_TRUE (contains (refusalOf ([&] { writeDocumentFile ("x", folder.file (".")); }), "a directory"));
    EXPECT_TRUE (contains (refusalOf ([&] { writeDocumentFile ("x", "/dev/null"); }), "a device"));
}

TEST (DocumentFile, RefusesMoreThanFourMebibytes)
{
    const TemporaryFolder folder;
    const auto file = folder.write ("big", std::string (DocumentLimits::bytes, ' '));
    EXPECT_EQ (readDocumentFile (file).size(), DocumentLimits::bytes);
    fs::resize_file (file, DocumentLimits::bytes + 1);
    EXPECT_TRUE (contains (refusalToRead (file), "larger than 4 MiB"));
    fs::resize_file (file, std::uintmax_t { 1 } << 40); // sparse
    EXPECT_TRUE (contains (refusalToRead (file), "larger than 4 MiB"));
}

TEST (DocumentFile, ReadsFilesThatStateNoSize)
{
    EXPECT_FALSE (readDocumentFile ("/proc/self/status").empty());
}

TEST (DocumentFile, RefusesWhatMayNotBeReadOrWritten)
{
    if (::geteuid() == 0)
        GTEST_SKIP() << "root may read and write everything";
    const TemporaryFolder folder;
    const auto file = folder.write ("a.json", "old");
    ::chmod (file.c_str(), 0000);
    EXPECT_TRUE (contains (refusalToRead (file), "cannot be opened"));
    ::chmod (file.c_str(), 0444);
    EXPECT_TRUE (contains (refusalOf ([&file] { writeDocumentFile ("new", file); }), "write-protected"));
    EXPECT_EQ (textOf (file), "old");
}

TEST (DocumentFile, KeepsPermissions)
{
    const TemporaryFolder folder;
    const auto file = folder.write ("a.json", "old");
    fs::permissions (file, fs::perms (0640));
    writeDocumentFile ("new", file);
    EXPECT_EQ (fs::status (file).permissions(), fs::perms (0640));
}

TEST (DocumentFile, FollowsSymbolicLinks)
{
    const TemporaryFolder folder;
    fs::create_directory (folder.file ("sub"));
    folder.write ("sub/real.json", "old");
    fs::create_symlink ("sub/real.json", folder.file ("link.json"));
    fs::create_symlink ("link.json", folder.file ("link2.json"));
    writeDocumentFile ("new", folder.file ("link2.json"));
    EXPECT_TRUE (fs::is_symlink (folder.file ("link2.json")));
    EXPECT_TRUE (fs::is_symlink (folder.file ("link.json")));
    EXPECT_EQ (textOf (folder.file ("sub/real.json")), "new");

    fs::create_symlink ("sub/later.json", folder.file ("link3.json"));
    writeDocumentFile ("made", folder.file ("link3.json"));
    EXPECT_TRUE (fs::is_symlink (folder.file ("link3.json")));
    EXPECT_EQ (textOf (folder.file ("sub/later.json")), "made");
}

TEST (DocumentFile, RefusesLinksInACircle)
{
    const TemporaryFolder folder;
    fs::create_symlink ("b", folder.file ("a"));
    fs::create_symlink ("a", folder.file ("b"));
    EXPECT_NE (refusalToRead (folder.file ("a")), "no error");
    EXPECT_TRUE (contains (refusalOf ([&] { writeDocumentFile ("x", folder.file ("a")); }), "circle"));
}

TEST (DocumentFile, LeavesTheOldFileWhenTheFolderIsGone)
{
    const TemporaryFolder folder;
    EXPECT_TRUE (
        contains (refusalOf ([&] { writeDocumentFile ("x", folder.file ("none/a.json")); }), "no file can be written"));
    EXPECT_TRUE (folder.content().empty());
}

} // namespace stopwright
