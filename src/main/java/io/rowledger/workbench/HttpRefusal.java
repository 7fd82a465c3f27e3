package io.rowledger.workbench;

/** A request that is not answered: an HTTP status and what a person is told. */
final class HttpRefusal extends RuntimeException {
    private static final long serialVersionUID = 1;

    static final int BAD_REQUEST = 400;
    static final int FORBIDDEN = 403;
    static final int NOT_FOUND = 404;
    static final int METHOD = 405;
    static final int CONFLICT = 409;
    static final int TOO_LARGE = 413;
    static final int UNUSABLE = 422;
    static final int FAILED = 500;
    static final int BUSY = 503;
    static final int NO_ROOM = 507;

    private final int status;
    private final transient ProblemText problem;

    private HttpRefusal(int status, ProblemText problem, String message) {
        super(message, null, false, false);
        this.status = status;
        this.problem = problem;
    }

    /** Refuses with an HTTP status and a message of the workbench; see {@link ProblemText#of(String, Object...)}. */
    HttpRefusal(int status, String key, Object... values) {
        this(status, ProblemText.of(key, values), key);
    }

    /** Refuses with an HTTP status. */
    HttpRefusal(int status, ProblemText problem) {
        this(status, problem, problem.toString());
    }

    int status() {
        return status;
    }

    ProblemText problem() {
        return problem;
    }
}
