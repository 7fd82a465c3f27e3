package io.rowledger.cli;

import picocli.CommandLine.IVersionProvider;

/** The program's version, from the jar's manifest. */
final class Version implements IVersionProvider {
    static String number() {
        String version = Version.class.getPackage().getImplementationVersion();
        return version == null ? "development" : version;
    }

    @Override
    public String[] getVersion() {
        return new String[] {"rowledger " + number()};
    }
}
