package io.rowledger.workbench;

/** A request that is not answered: an HTTP status and a sentence for the person. */
final class HttpRefusal extends RuntimeException {
    private static final long serialVersionUID = 1;

    static final int BAD_REQUEST = 400;
    static final int FORBIDDEN = 403;
    static final int NOT_FOUND = 404;
    static final int METHOD = 405;
    static final int TIMEOUT = 408;
    static final int CONFLICT = 409;
    static final int TOO_LARGE = 413;
    static final int BUSY = 503;

    private final int status;

    /** Refuses with an HTTP status. */
    HttpRefusal(int status, String message) {
        super(message, null, false, false);
        this.status = status;
    }

    int status() {
        return status;
    }
}
