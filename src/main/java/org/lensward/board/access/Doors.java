package org.lensward.board.access;

import java.util.List;

/**
 * The ways in that are set up, as the sign-in page shows them.
 *
 * @param people whether the hospital's identity provider is configured
 * @param demo the demo's people; none outside the demo
 * @param password the demo's password, shown on its sign-in page; empty outside the demo
 */
public record Doors(boolean people, List<DemoUsers.Person> demo, String password) {

    /** Whether nobody at all can sign in. */
    public boolean none() {
        return !people && demo.isEmpty();
    }
}
