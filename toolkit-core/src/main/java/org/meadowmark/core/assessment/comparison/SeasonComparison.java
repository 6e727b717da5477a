package org.meadowmark.core.assessment.comparison;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import org.meadowmark.core.assessment.LoadedSurvey;
import org.meadowmark.core.assessment.SurveyLoader;
import org.meadowmark.core.assessment.comparison.MarkerReader.MarkerFile;
import org.meadowmark.core.assessment.comparison.MarkerReader.Markers;
import org.meadowmark.core.change.CommonGround;
import org.meadowmark.core.change.MeasuredSeason;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.change.SeasonPair;
import org.meadowmark.core.change.SeasonSurvey;
import org.meadowmark.core.change.bed.BedComparer;
import org.meadowmark.core.change.bed.SeasonBedChange;
import org.meadowmark.core.change.comparability.Aspect;
import org.meadowmark.core.change.comparability.SurveyComparison;
import org.meadowmark.core.change.comparability.SurveyDifference;
import org.meadowmark.core.change.effect.EffectSettings;
import org.meadowmark.core.change.effect.MarkerEffect;
import org.meadowmark.core.change.effect.MarkerEffectFinder;
import org.meadowmark.core.change.effect.SegmentSeasons;
import org.meadowmark.core.change.history.ScarHistories;
import org.meadowmark.core.change.history.ScarHistory;
import org.meadowmark.core.change.match.ScarMatcher;
import org.meadowmark.core.change.rates.BedBootstrap;
import org.meadowmark.core.change.rates.ClosingObservation;
import org.meadowmark.core.change.rates.ClosingObservations;
import org.meadowmark.core.change.rates.EdgeRateFit;
import org.meadowmark.core.change.rates.EdgeRateFitter;
import org.meadowmark.core.change.rates.FigureChange;
import org.meadowmark.core.change.rates.FigureChanges;
import org.meadowmark.core.change.rates.HealingRate;
import org.meadowmark.core.change.rates.HealingRates;
import org.meadowmark.core.change.rates.NewScarRate;
import org.meadowmark.core.change.rates.NewScarRates;
import org.meadowmark.core.change.rates.ReScarring;
import org.meadowmark.core.change.rates.SegmentRate;
import org.meadowmark.core.change.rates.SegmentRates;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.SurveyMeasurer;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.measure.recovery.SurveyRecoveryEstimator;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.project.PointProjector;
import org.meadowmark.core.rank.SegmentScars;
import org.meadowmark.core.rank.statistics.EmpiricalBayes;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.ComparisonParameters;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.PositionalAccuracy;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.ComparedSurveys;
import org.meadowmark.core.write.ComparedSurveys.ReadSurvey;
import org.meadowmark.core.write.record.FileDigest;

/**
 * Compares surveys of one place: read each, measure it, match the scars of each with the next,
 * rates, effect of markers.
 *
 * <p>Everything is on the grid of the last survey, with its parameters, its channels and its
 * management areas. Memory holds all surveys at once.
 */
final class SeasonComparison {
  private static final int FEWEST_SURVEYS = 2;
  private static final PositionalAccuracy NOT_STATED = PositionalAccuracy.ofRadialRmse(0);

  private final List<SurveyDefinition> definitions;
  private final ReferenceTables tables;
  private final Set<Aspect> despite;
  private final Optional<MarkerFile> markers;
  private final Progress progress;
  private final Parameters parameters;
  private final ComparisonParameters choices;
  private final List<ReadSurvey> read = new ArrayList<>();
  private final List<List<FileDigest>> inputs = new ArrayList<>();
  private final List<MetricSurvey> mapped = new ArrayList<>();

  /**
   * Prepares a comparison.
   *
   * @throws MeadowmarkException if there are fewer than two surveys, one has no date, or two have
   *     the same
   */
  SeasonComparison(
      List<SurveyDefinition> surveys,
      ReferenceTables tables,
      Set<Aspect> despite,
      Optional<MarkerFile> markers,
      Progress progress) {
    this.definitions = inOrder(surveys);
    this.tables = tables;
    this.despite = despite;
    this.markers = markers;
    this.progress = progress;
    this.parameters = definitions.get(definitions.size() - 1).parameters();
    this.choices = parameters.comparison();
  }

  private static List<SurveyDefinition> inOrder(List<SurveyDefinition> surveys) {
    if (surveys.size() < FEWEST_SURVEYS) {
      throw new MeadowmarkException("one survey cannot be compared; name two or more");
    }
    for (SurveyDefinition survey : surveys) {
      if (survey.date().isEmpty()) {
        throw new MeadowmarkException(
            label(survey) + ": has no date; give 'date' under [survey] in its survey file");
      }
    }
    List<SurveyDefinition> ordered =
        surveys.stream()
            .sorted(Comparator.comparing((SurveyDefinition survey) -> date(survey)))
            .toList();
    for (int i = 1; i < ordered.size(); i++) {
      if (date(ordered.get(i)).equals(date(ordered.get(i - 1)))) {
        throw new MeadowmarkException(
            label(ordered.get(i))
                + ": has the same date as "
                + label(ordered.get(i - 1))
                + "; surveys are told apart by it");
      }
    }
    return ordered;
  }

  private static LocalDate date(SurveyDefinition survey) {
    return survey.date().orElseThrow();
  }

  private static String label(SurveyDefinition survey) {
    return survey.file().map(Object::toString).orElse(survey.name());
  }

  /**
   * Compares.
   *
   * @throws MeadowmarkException if a survey cannot be used, or two differ so much that a comparison
   *     would mislead and the difference was not let pass
   */
  ComparedSurveys compare() {
    load();
    List<CommonGround> grounds = new ArrayList<>();
    List<SurveyDifference> differences = new ArrayList<>();
    for (int i = 1; i < mapped.size(); i++) {
      CommonGround ground = CommonGround.of(mapped.get(i - 1), mapped.get(i));
      grounds.add(ground);
      differences.addAll(
          SurveyComparison.of(
              Traits.of(read.get(i - 1), mapped.get(i - 1)),
              Traits.of(read.get(i), mapped.get(i)),
              ground,
              choices));
    }
    refuseUnsafe(differences);
    List<MeasuredSeason> seasons = new ArrayList<>();
    for (int i = 0; i < mapped.size(); i++) {
      seasons.add(measured(i));
    }
    List<SeasonPair> pairs = new ArrayList<>();
    for (int i = 1; i < seasons.size(); i++) {
      MeasuredSeason earlier = seasons.get(i - 1);
      MeasuredSeason later = seasons.get(i);
      pairs.add(
          new SeasonPair(
              earlier,
              later,
              new ScarMatcher(parameters.matching())
                  .match(earlier.survey(), later.survey(), progress),
              grounds.get(i - 1)));
    }
    return results(differences, seasons, pairs);
  }

  /** Digests of the files that were read, by survey in order of time. */
  List<List<FileDigest>> inputs() {
    return List.copyOf(inputs);
  }

  private void load() {
    int last = definitions.size() - 1;
    load(definitions.get(last), 0);
    String grid = PointProjector.gridCode(mapped.get(0).gridLabel());
    for (int i = 0; i < last; i++) {
      SurveyDefinition definition = definitions.get(i);
      load(definition.withParameters(definition.parameters().onGrid(grid)), i);
    }
  }

  private void load(SurveyDefinition definition, int place) {
    SurveyLoader.Watched watched = new SurveyLoader(definition, tables, progress).loadWatched();
    LoadedSurvey loaded = watched.loaded();
    mapped.add(place, loaded.orThrow());
    inputs.add(place, watched.inputs());
    read.add(place, new ReadSurvey(definition, loaded.findings(), loaded.counts()));
  }

  private void refuseUnsafe(List<SurveyDifference> differences) {
    SurveyComparison.refusal(differences, despite)
        .ifPresent(
            reason -> {
              throw new MeadowmarkException(reason);
            });
  }

  private MeasuredSeason measured(int place) {
    SurveyDefinition definition = read.get(place).definition();
    MetricSurvey survey = mapped.get(place);
    Measurement measurement =
        new SurveyMeasurer(survey, parameters.withoutDetail(), tables, progress).measure();
    SurveyRecovery recovery =
        new SurveyRecoveryEstimator(
                parameters, tables, OptionalInt.of(date(definition).getYear()), progress)
            .estimate(measurement);
    return new MeasuredSeason(
        new SeasonSurvey(
            date(definition), survey, definition.parameters().position().orElse(NOT_STATED)),
        measurement,
        recovery);
  }

  private ComparedSurveys results(
      List<SurveyDifference> differences, List<MeasuredSeason> seasons, List<SeasonPair> pairs) {
    double confidence = choices.confidence();
    BedBootstrap bootstrap =
        new BedBootstrap(choices.bootstrapDraws(), parameters.seed(), confidence);
    List<NewScarRate> newScars = new ArrayList<>();
    List<HealingRate> healing = new ArrayList<>();
    List<FigureChange> changes = new ArrayList<>();
    progress.begin("Working out rates", pairs.size());
    for (SeasonPair pair : pairs) {
      newScars.addAll(NewScarRates.of(pair, confidence));
      healing.addAll(HealingRates.of(pair, choices.widthClassLimitsMetres(), confidence));
      changes.addAll(FigureChanges.of(pair, parameters.crossingDistanceMetres(), bootstrap));
      progress.advance(1);
    }
    progress.end();
    Beside beside = beside(pairs);
    return new ComparedSurveys(
        read,
        seasons,
        pairs,
        histories(seasons, pairs),
        bedChanges(pairs),
        differences,
        despite.stream().map(Aspect::key).sorted().toList(),
        newScars,
        healing,
        edgeRates(pairs),
        changes,
        beside.rates,
        beside.markers.marks(),
        beside.effect,
        beside.markers.findings(),
        parameters,
        tables);
  }

  private List<ScarHistory> histories(List<MeasuredSeason> seasons, List<SeasonPair> pairs) {
    progress.begin("Stringing histories", -1);
    List<ScarHistory> histories =
        ScarHistories.trace(
            seasons.stream().map(MeasuredSeason::survey).toList(),
            pairs.stream().map(SeasonPair::match).toList(),
            new ScarMatcher(parameters.matching()));
    progress.end();
    return histories;
  }

  private List<SeasonBedChange> bedChanges(List<SeasonPair> pairs) {
    return pairs.stream()
        .map(
            pair ->
                BedComparer.compare(
                    pair.earlier().survey(),
                    pair.later().survey(),
                    parameters.matching().leastToleranceMetres(),
                    progress))
        .toList();
  }

  private List<EdgeRateFit> edgeRates(List<SeasonPair> pairs) {
    List<ClosingObservation> observations =
        ClosingObservations.of(pairs, parameters.recovery().excavationDoublingMetres());
    Set<String> species = new TreeSet<>();
    observations.forEach(one -> species.add(one.species()));
    return species.stream()
        .map(
            key ->
                EdgeRateFitter.fit(
                    key,
                    observations.stream().filter(one -> one.species().equals(key)).toList(),
                    choices.confidence()))
        .toList();
  }

  private record Beside(List<SegmentRate> rates, Markers markers, Optional<MarkerEffect> effect) {}

  private Beside beside(List<SeasonPair> pairs) {
    progress.begin("Giving new scars to channels", -1);
    List<Channel> channels = mapped.get(mapped.size() - 1).channels();
    List<SegmentRate> rates = new ArrayList<>();
    List<Double> pieces = new ArrayList<>();
    List<SegmentScars> bySeason = new ArrayList<>();
    for (int i = 0; i < pairs.size(); i++) {
      SeasonPair pair = pairs.get(i);
      SegmentScars segments = new SegmentScars(common(pair, channels), parameters);
      bySeason.add(segments);
      SegmentRates.Rates ofSeason =
          SegmentRates.of(
              pair,
              segments.segments(),
              segments.bedHectares(Progress.NONE),
              segments.shares(Progress.NONE),
              ReScarring.of(pairs.subList(0, i + 1)),
              choices.confidence());
      rates.addAll(ofSeason.rates());
      pieces.addAll(ofSeason.pieceMetres());
    }
    progress.end();
    if (markers.isEmpty()) {
      return new Beside(rates, new Markers(List.of(), List.of()), Optional.empty());
    }
    SegmentScars segments = bySeason.get(bySeason.size() - 1);
    Markers given =
        new MarkerReader(
                markers.get(),
                segments,
                mapped.get(mapped.size() - 1).gridLabel(),
                parameters.channelReachMetres())
            .read();
    return new Beside(rates, given, Optional.of(effect(pairs, segments, rates, pieces, given)));
  }

  /** The later survey, limited to what both looked at, with the last survey's channels. */
  private static MetricSurvey common(SeasonPair pair, List<Channel> channels) {
    MetricSurvey later = pair.later().mapped();
    return new MetricSurvey(
        later.gridLabel(),
        later.gridWkt(),
        later.scars(),
        later.beds(),
        channels,
        later.managementAreas(),
        pair.ground().surveyedArea(),
        later.barriers(),
        later.depth(),
        later.scale());
  }

  private MarkerEffect effect(
      List<SeasonPair> pairs,
      SegmentScars segments,
      List<SegmentRate> rates,
      List<Double> pieces,
      Markers given) {
    progress.begin("Judging markers", -1);
    List<Season> seasons = pairs.stream().map(SeasonPair::season).toList();
    int count = segments.segments().size();
    List<SegmentSeasons> figures = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      List<Double> metres = new ArrayList<>();
      List<Double> hectares = new ArrayList<>();
      for (int season = 0; season < seasons.size(); season++) {
        SegmentRate rate = rates.get(season * count + i);
        metres.add(rate.newMetres());
        hectares.add(rate.bedHectares());
      }
      figures.add(
          new SegmentSeasons(
              segments.segments().get(i).id(),
              segments.segments().get(i).lengthMetres(),
              metres,
              hectares));
    }
    EffectSettings settings =
        new EffectSettings(
            choices.exposure(),
            choices.confidence(),
            choices.mostPermutations(),
            parameters.seed(),
            choices.controlRateFactor(),
            choices.controlDistanceMetres(),
            choices.controlMinimumExposureHectares(),
            choices.detectableDrop(),
            choices.detectionPower(),
            choices.mostFurtherSeasons());
    double event =
        EmpiricalBayes.eventSize(pieces.stream().mapToDouble(Double::doubleValue).toArray())
            .orElse(0);
    MarkerEffect effect =
        new MarkerEffectFinder(seasons, figures, segments.network(), event, settings)
            .find(given.marks());
    progress.end();
    return effect;
  }
}
