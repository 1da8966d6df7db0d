package org.lensward.plan;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.TreeSet;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;

/**
 * Names a plan by what it rests on: the versions of every resource, the findings and the policy.
 *
 * @param hex SHA-256 in lower-case hexadecimal
 */
public record Fingerprint(String hex) {

    /** Raised when the planner itself changes what it makes of the same input. */
    private static final String PLANNER = "planner-2";

    static Fingerprint of(Collection<Evidence> basis, List<Finding> findings, String policyVersion) {
        TreeSet<String> lines = new TreeSet<>();
        basis.forEach(evidence -> lines.add(evidence.resource() + "|" + evidence.version()));
        findings.forEach(finding -> lines.add("finding|" + finding.code().code()));
        String text = PLANNER + "\n" + policyVersion + "\n" + String.join("\n", lines);
        return new Fingerprint(HexFormat.of().formatHex(sha256().digest(text.getBytes(StandardCharsets.UTF_8))));
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java platform has SHA-256", impossible);
        }
    }

    /** Enough of it to tell plans apart on paper. */
    public String brief() {
        return hex.substring(0, 12);
    }

    @Override
    public String toString() {
        return hex;
    }
}
