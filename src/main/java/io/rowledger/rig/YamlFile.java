package io.rowledger.rig;

import io.rowledger.digest.Sha256;
import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;

/** A YAML file as a tree of nodes that know their lines. */
final class YamlFile {
    /** A rig file has a few kilobytes; anything much larger is another file. */
    private static final int MAX_BYTES = 1 << 20;

    private static final Charset WINDOWS = Charset.forName("windows-1252");

    private final String name;
    private final String sha256;
    private final String text;
    private final Node root;
    private final YamlMap top;

    YamlFile(Path path) {
        this(path.toString(), bytes(path));
    }

    /** A file that is not on disk. */
    YamlFile(String name, byte[] bytes) {
        this.name = name;
        sha256 = Sha256.of(bytes);
        text = text(bytes);
        root = compose(text);
        top = YamlMap.of(name, "", root);
    }

    /** The file as its owner wrote it, without a byte order mark. */
    String text() {
        return text;
    }

    /** Its tree of nodes, whose marks count the text's code points. */
    Node root() {
        return root;
    }

    String name() {
        return name;
    }

    String sha256() {
        return sha256;
    }

    YamlMap top() {
        return top;
    }

    /**
     * Text editors write UTF-8 with or without a mark, UTF-16 with one, or the Western Windows code page; the latter is
     * known by not being UTF-8, and there every byte stands for a character.
     */
    private static String text(byte[] bytes) {
        boolean utf16 = bytes.length >= 2
                && ((bytes[0] == (byte) 0xff && bytes[1] == (byte) 0xfe)
                        || (bytes[0] == (byte) 0xfe && bytes[1] == (byte) 0xff));
        if (utf16) {
            return new String(bytes, StandardCharsets.UTF_16);
        }
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return text.startsWith("\ufeff") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            return new String(bytes, WINDOWS);
        }
    }

    private Node compose(String text) {
        // Nothing in a rig file needs an alias to a block; refusing them refuses the files that grow when unfolded.
        LoadSettings settings = LoadSettings.builder()
                .setLabel(name)
                .setUseMarks(true)
                .setMaxAliasesForCollections(0)
                .setCodePointLimit(MAX_BYTES)
                .build();
        try {
            Optional<Node> node = new Compose(settings).composeString(text);
            return node.orElseThrow(() -> UnusableInputException.found("an empty rig file")
                    .inFile(name)
                    .expected("a rig file with rig, rows and products")
                    .hint("start from the rig file in the README"));
        } catch (MarkedYamlEngineException e) {
            throw notYaml(e, text);
        } catch (YamlEngineException | StackOverflowError e) {
            // The composer calls itself for each level; a file that nests thousands deep is no rig file.
            throw UnusableInputException.found("a block that refers to another one (& and *) or nests too deep")
                    .inFile(name)
                    .expected("a rig file")
                    .hint("write each block out where it stands");
        }
    }

    private UnusableInputException notYaml(MarkedYamlEngineException e, String text) {
        int line = e.getProblemMark().map(Mark::getLine).orElse(-1) + 1;
        String[] lines = text.split("\\R", -1);
        boolean tab = line >= 1 && line <= lines.length && lines[line - 1].indexOf('\t') >= 0;
        if (tab) {
            return UnusableInputException.found("a tab")
                    .inFile(name)
                    .atLine(line)
                    .expected("lines indented with blanks, as YAML wants them")
                    .hint("put two blanks for each tab");
        }
        if (e.getProblem().contains("another document")) {
            return UnusableInputException.found("a second document (---)")
                    .inFile(name)
                    .atLine(line)
                    .expected("one rig in a rig file")
                    .hint("put each rig into a file of its own");
        }
        return UnusableInputException.found("a line that is no YAML (" + e.getProblem() + ")")
                .inFile(name)
                .atLine(line)
                .expected("\"key: value\", each block indented by two more blanks than its key")
                .hint("look for a missing colon, quote or bracket in this line or the one above");
    }

    private static byte[] bytes(Path path) {
        try {
            if (Files.isDirectory(path)) {
                throw message(path, "a folder", "name the rig file in it");
            }
            return RegularFile.bytes(path, MAX_BYTES, "a rig file in YAML");
        } catch (NoSuchFileException e) {
            throw message(path, "no such file", "check the name and the folder");
        } catch (AccessDeniedException e) {
            throw message(path, "a file that may not be read", "give yourself leave to read it");
        } catch (IOException e) {
            throw message(path, "a file that can't be read (" + e.getMessage() + ")", "copy the file again");
        }
    }

    private static UnusableInputException message(Path path, String found, String hint) {
        return UnusableInputException.found(found)
                .inFile(path.toString())
                .expected("a rig file in YAML")
                .hint(hint);
    }
}
