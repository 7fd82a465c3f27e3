package io.rowledger.cli;

import io.rowledger.finding.UnusableInputException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What the command-line library says of a call, as a refusal with what was found, what was expected and a hint. */
final class MisusedCall {
    /** The message of a call without a verb. */
    static final String NO_COMMAND = "no command";

    private MisusedCall() {}

    static UnusableInputException refusal(ParameterException e) {
        CommandSpec command = e.getCommandLine().getCommandSpec();
        String help = "'" + command.qualifiedName() + " --help' lists the options";
        if (e instanceof MissingParameterException missing) {
            String names = String.join(
                    ", ", missing.getMissing().stream().map(MisusedCall::name).toList());
            return UnusableInputException.found("a call without " + names)
                    .expected(command.qualifiedName() + " with " + names)
                    .hint(help);
        }
        if (e instanceof UnmatchedArgumentException unmatched
                && !unmatched.getUnmatched().isEmpty()) {
            String word = unmatched.getUnmatched().get(0);
            List<String> near = unmatched.getSuggestions();
            boolean option = word.startsWith("-");
            return UnusableInputException.found("\"" + word + "\"")
                    .expected(option ? "an option of " + command.qualifiedName() : "a command or a file that it takes")
                    .hint(near.isEmpty() ? help : "did you mean " + String.join(" or ", near) + "? " + help);
        }
        String message = String.valueOf(e.getMessage());
        ArgSpec about = e.getArgSpec();
        if (about != null && e.getValue() != null && isPath(about)) {
            return UnusableInputException.found("\"" + e.getValue() + "\", a name that this session can't hold")
                    .atColumn(place(about))
                    .expected("a file name without NUL, in the characters of the session's language setting")
                    .hint("for letters beyond ASCII set LC_ALL=C.UTF-8 and run this again");
        }
        if (about instanceof OptionSpec option && e.getValue() != null) {
            return UnusableInputException.found("\"" + e.getValue() + "\"")
                    .atColumn(option.longestName())
                    .expected(values(option))
                    .hint(help);
        }
        if (message.equals(NO_COMMAND)) {
            return UnusableInputException.found("no command")
                    .expected(
                            "one of " + String.join(", ", command.subcommands().keySet()))
                    .hint(help);
        }
        return UnusableInputException.found("a call that can't be understood (" + message + ")")
                .expected(command.qualifiedName() + " with its files and options")
                .hint(help);
    }

    private static boolean isPath(ArgSpec about) {
        return type(about) == Path.class;
    }

    private static Class<?> type(ArgSpec about) {
        return about.typeInfo().isCollection()
                ? about.typeInfo().getAuxiliaryTypes()[0]
                : about.typeInfo().getType();
    }

    private static String place(ArgSpec about) {
        return about instanceof OptionSpec option ? option.longestName() : about.paramLabel();
    }

    /** What an option takes, in words. */
    private static String values(OptionSpec option) {
        Class<?> type = type(option);
        if (type.isEnum()) {
            return String.join(
                    ", ",
                    Arrays.stream(type.getEnumConstants())
                            .map(one -> one.toString().toLowerCase(Locale.ROOT))
                            .toList());
        }
        if (type == Integer.class || type == int.class) {
            return "a whole number";
        }
        return type == Boolean.class || type == boolean.class ? "the option alone" : option.paramLabel();
    }

    private static String name(ArgSpec missing) {
        return missing instanceof OptionSpec option
                ? option.longestName() + " " + option.paramLabel()
                : missing.paramLabel();
    }
}
