package org.seamtally.gas;

/** A start whose flow does not become steady: a set-up far from anything that gas flows through. */
public final class UnsteadyException extends RuntimeException {

    private static final long serialVersionUID = 1;

    UnsteadyException() {
        super("the hose's flow does not become steady");
    }
}
