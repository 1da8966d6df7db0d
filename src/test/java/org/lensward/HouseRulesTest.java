package org.lensward;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.lensward.eye.Laterality;
import org.lensward.optics.Formula;

/** The rules of the house, as DEVELOPERS.md explains them. */
@AnalyzeClasses(packages = "org.lensward", importOptions = ImportOption.DoNotIncludeTests.class)
class HouseRulesTest {

    private static final String[] CORE = {
        "quantity", "finding", "eye", "optics", "lens", "risk", "plan", "check", "outcome"
    };

    /** What a fingerprint needs: the same bytes in, the same hash out. The error function and the root of an equation are a library's. */
    private static final DescribedPredicate<JavaClass> HASHING = resideInAnyPackage(
                    "java.nio.charset", "org.apache.commons.math3.special", "org.apache.commons.math3.analysis..")
            .or(named("java.security.MessageDigest", "java.security.NoSuchAlgorithmException"));

    /** Flows through a network are a library's. */
    private static final DescribedPredicate<JavaClass> GRAPHS = resideInAnyPackage("org.jgrapht..");

    /** Distributions, regression, roots and least values are a library's; so is chance, which is always handed in. */
    private static final DescribedPredicate<JavaClass> STATISTICS = resideInAnyPackage(
                    "org.apache.commons.math3.distribution",
                    "org.apache.commons.math3.linear",
                    "org.apache.commons.math3.optim..",
                    "org.apache.commons.math3.stat..")
            .or(named("org.apache.commons.math3.random.RandomGenerator"));

    @ArchTest
    static final ArchRule quantity_knows_only_the_jdk = knows("quantity");

    @ArchTest
    static final ArchRule finding_knows_only_the_jdk = knows("finding");

    @ArchTest
    static final ArchRule eye_knows_quantity_and_finding = knows("eye", "quantity", "finding");

    @ArchTest
    static final ArchRule optics_knows_eye = knows("optics", "quantity", "finding", "eye");

    @ArchTest
    static final ArchRule lens_knows_eye_and_optics = knowsAlso(GRAPHS, "lens", "quantity", "finding", "eye", "optics");

    @ArchTest
    static final ArchRule risk_knows_eye_optics_and_lens =
            knows("risk", "quantity", "finding", "eye", "optics", "lens");

    @ArchTest
    static final ArchRule plan_knows_the_rest_of_the_core =
            knows("plan", "quantity", "finding", "eye", "optics", "lens", "risk", "check");

    /** It knows a plan by its fingerprint alone, so that the policy of a plan may hold the policy of the check. */
    @ArchTest
    static final ArchRule check_knows_eye_and_lens = knows("check", "quantity", "finding", "eye", "lens");

    @ArchTest
    static final ArchRule outcome_knows_what_plans_rest_on_and_no_plan =
            knowsAlso(STATISTICS, "outcome", "quantity", "finding", "eye", "optics", "lens", "risk");

    @ArchTest
    static final ArchRule nothing_sits_on_flow_or_demo = noClasses()
            .that()
            .resideInAnyPackage(inside(
                    "quantity", "finding", "eye", "optics", "lens", "risk", "plan", "check", "outcome", "record"))
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(inside("flow", "demo"))
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule the_core_tells_no_time_and_throws_no_dice = noClasses()
            .that()
            .resideInAnyPackage(inside(CORE))
            .should(callAnyOf(
                    Set.of(
                            "now",
                            "currentTimeMillis",
                            "nanoTime",
                            "systemDefault",
                            "random",
                            "randomUUID",
                            "getenv",
                            "getProperty"),
                    "asks the clock, chance or the machine"))
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule the_core_reads_and_writes_nothing = noClasses()
            .that()
            .resideInAnyPackage(inside(CORE))
            .should()
            .dependOnClassesThat(resideInAnyPackage(
                            "java.io..",
                            "java.nio",
                            "java.nio.channels..",
                            "java.nio.file..",
                            "java.net..",
                            "java.sql..")
                    .or(named("java.util.Random", "java.util.SplittableRandom", "java.util.Scanner"))
                    .or(named("java.security.SecureRandom", "java.util.concurrent.ThreadLocalRandom"))
                    .or(named("java.time.Clock", "java.time.InstantSource", "java.util.Date")))
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule no_package_is_its_own_neighbour =
            slices().matching("org.lensward.(*)..").should().beFreeOfCycles().allowEmptyShould(true);

    @ArchTest
    static final ArchRule a_bare_number_crosses_no_package = methods()
            .that()
            .arePublic()
            .and()
            .areDeclaredInClassesThat()
            .arePublic()
            .and()
            .areDeclaredInClassesThat()
            .resideInAnyPackage(inside("finding", "eye", "optics", "lens", "risk", "plan", "check", "outcome"))
            .should(notMentionBareNumbers())
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule a_formula_knows_no_right_or_left = noClasses()
            .that()
            .implement(Formula.class)
            .or()
            .haveSimpleName("ThinEye")
            .or()
            .haveSimpleName("EyeShape")
            .should()
            .dependOnClassesThat()
            .belongToAnyOf(Laterality.class);

    @ArchTest
    static void every_package_says_what_it_is_for_and_is_null_marked(JavaClasses imported) {
        classes().should(liveInANullMarkedPackage()).check(imported);
    }

    /** A positive list: what is not named here is not known. */
    private static ArchRule knows(String name, String... others) {
        return knowsAlso(HASHING, name, others);
    }

    private static ArchRule knowsAlso(DescribedPredicate<JavaClass> library, String name, String... others) {
        String[] own =
                inside(Stream.concat(Stream.of(name), Arrays.stream(others)).toArray(String[]::new));
        String[] plain = {
            "java.lang..", "java.util..", "java.time..", "java.math..", "java.text..", "org.jspecify.annotations"
        };
        return classes()
                .that()
                .resideInAPackage("org.lensward." + name + "..")
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(own)
                        .or(resideInAnyPackage(plain))
                        .or(HASHING)
                        .or(library)
                        .or(primitive()))
                .allowEmptyShould(true);
    }

    private static String[] inside(String... names) {
        return Arrays.stream(names).map(name -> "org.lensward." + name + "..").toArray(String[]::new);
    }

    private static DescribedPredicate<JavaClass> primitive() {
        return DescribedPredicate.describe(
                "primitive", type -> type.getBaseComponentType().isPrimitive());
    }

    private static DescribedPredicate<JavaClass> named(String... names) {
        Set<String> wanted = Set.of(names);
        return DescribedPredicate.describe(String.join(", ", names), type -> wanted.contains(type.getName()));
    }

    private static ArchCondition<JavaClass> callAnyOf(Set<String> names, String description) {
        return new ArchCondition<>(description) {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                type.getAccessesFromSelf().stream()
                        .filter(access ->
                                access.getTargetOwner().getPackageName().startsWith("java."))
                        .filter(access -> names.contains(access.getTarget().getName()))
                        .forEach(access -> events.add(SimpleConditionEvent.satisfied(type, access.getDescription())));
            }
        };
    }

    private static ArchCondition<JavaMethod> notMentionBareNumbers() {
        Set<String> bare = Set.of("double", "float", "java.lang.Double", "java.lang.Float");
        return new ArchCondition<>("neither take nor return a bare number") {
            @Override
            public void check(JavaMethod method, ConditionEvents events) {
                Stream.concat(method.getParameterTypes().stream(), Stream.of(method.getReturnType()))
                        .map(JavaType::getAllInvolvedRawTypes)
                        .flatMap(Set::stream)
                        .filter(type ->
                                bare.contains(type.getBaseComponentType().getName()))
                        .forEach(type -> events.add(SimpleConditionEvent.violated(
                                method, method.getFullName() + " mentions " + type.getName())));
            }
        };
    }

    private static ArchCondition<JavaClass> liveInANullMarkedPackage() {
        return new ArchCondition<>("live in a package with package-info and @NullMarked") {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                boolean marked = type.getPackage()
                        .tryGetPackageInfo()
                        .map(info -> info.isAnnotatedWith(NullMarked.class))
                        .orElse(false);
                events.add(new SimpleConditionEvent(type, marked, type.getPackageName() + " is not null-marked"));
            }
        };
    }
}
