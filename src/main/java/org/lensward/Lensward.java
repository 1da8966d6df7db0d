package org.lensward;

/** Lensward. */
public final class Lensward {
    private Lensward() {}

    public static void main(String[] arguments) {
        System.out.println("hello");
    }
}
