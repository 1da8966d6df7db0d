package org.lensward.lens.label;

/**
 * The check digit of GS1 keys (GS1 General Specifications section 7.9.1): from the right, the check digit not counted, digits weigh 3 and 1
 * in turn, and the check digit brings the sum to a multiple of ten. It sees every wrong digit and every exchange of neighbours, save
 * neighbours five apart.
 */
final class Modulo10 {

    private Modulo10() {}

    /** Whether the digits end in the right check digit. */
    static boolean holds(String digits) {
        int sum = 0;
        for (int fromRight = 0; fromRight < digits.length(); fromRight++) {
            int digit = digits.charAt(digits.length() - 1 - fromRight) - '0';
            sum += fromRight % 2 == 0 ? digit : 3 * digit;
        }
        return sum % 10 == 0;
    }
}
