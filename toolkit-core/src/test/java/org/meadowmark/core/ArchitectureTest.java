package org.meadowmark.core;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Stages depend one way, and the core neither prints nor exits. */
@AnalyzeClasses(
    packages = "org.meadowmark.core",
    importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  @ArchTest
  static final ArchRule STAGES_DEPEND_ONE_WAY =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("store")
          .definedBy("org.meadowmark.core.store..")
          .layer("model")
          .definedBy("org.meadowmark.core.model..")
          .layer("reference")
          .definedBy("org.meadowmark.core.reference..")
          .layer("survey")
          .definedBy("org.meadowmark.core.survey..")
          .layer("read")
          .definedBy("org.meadowmark.core.read..")
          .layer("check")
          .definedBy("org.meadowmark.core.check..")
          .layer("project")
          .definedBy("org.meadowmark.core.project..")
          .layer("measure")
          .definedBy("org.meadowmark.core.measure..")
          .layer("partition")
          .definedBy("org.meadowmark.core.partition..")
          .layer("rank")
          .definedBy("org.meadowmark.core.rank..")
          .layer("plan")
          .definedBy("org.meadowmark.core.plan..")
          .layer("change")
          .definedBy("org.meadowmark.core.change..")
          .layer("write")
          .definedBy("org.meadowmark.core.write..")
          .layer("assessment")
          .definedBy("org.meadowmark.core.assessment..")
          .layer("api")
          .definedBy("org.meadowmark.core.api..")
          .whereLayer("api")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("assessment")
          .mayOnlyBeAccessedByLayers("api")
          .whereLayer("write")
          .mayOnlyBeAccessedByLayers("assessment", "api")
          .whereLayer("change")
          .mayOnlyBeAccessedByLayers("write", "assessment")
          .whereLayer("plan")
          .mayOnlyBeAccessedByLayers("change", "write", "assessment")
          .whereLayer("rank")
          .mayOnlyBeAccessedByLayers("plan", "change", "write", "assessment", "api")
          .whereLayer("partition")
          .mayOnlyBeAccessedByLayers("assessment")
          .whereLayer("measure")
          .mayOnlyBeAccessedByLayers(
              "partition", "rank", "plan", "change", "write", "assessment", "api")
          .whereLayer("project")
          .mayOnlyBeAccessedByLayers("assessment")
          .whereLayer("check")
          .mayOnlyBeAccessedByLayers("project", "assessment")
          .whereLayer("read")
          .mayOnlyBeAccessedByLayers("check", "project", "assessment")
          .whereLayer("survey")
          .mayOnlyBeAccessedByLayers(
              "read",
              "check",
              "project",
              "measure",
              "partition",
              "rank",
              "plan",
              "change",
              "write",
              "assessment",
              "api")
          .whereLayer("reference")
          .mayOnlyBeAccessedByLayers(
              "survey",
              "check",
              "project",
              "measure",
              "partition",
              "rank",
              "plan",
              "change",
              "write",
              "assessment",
              "api");

  @ArchTest
  static final ArchRule NO_CYCLES =
      slices().matching("org.meadowmark.core.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule CORE_DOES_NOT_PRINT =
      noClasses()
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .callMethod(Throwable.class, "printStackTrace")
          .because("the core returns results and findings; the command line talks");

  @ArchTest
  static final ArchRule CORE_DOES_NOT_EXIT =
      noClasses()
          .should()
          .callMethod(System.class, "exit", int.class)
          .orShould()
          .callMethod(Runtime.class, "exit", int.class)
          .orShould()
          .callMethod(Runtime.class, "halt", int.class);

  @ArchTest
  static final ArchRule CORE_DOES_NOT_NEED_A_CLUSTER =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "org.apache.spark..",
              "org.apache.sedona..",
              "org.apache.hadoop..",
              "org.apache.parquet..",
              "scala..");
}
